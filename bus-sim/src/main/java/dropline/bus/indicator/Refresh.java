package dropline.bus.indicator;

/** When the display of an indicator is refreshed; asked of the node whose program does it. */
public interface Refresh {
    /** End of the first refresh that starts at or after an instant, ns. */
    long shownNanos(long appliedNanos);
}
