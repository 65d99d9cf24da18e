package dropline.bus.supply;

import dropline.bus.pit.Draws;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Signal;

/** What an indicator takes for what it shows. */
public final class PartCurrent {
    private PartCurrent() {}

    /**
     * How much of it is on, 0..1, for a value: what lights, as bright as the value is high, dimmed by its curve; a
     * display, all of it.
     *
     * @param value in units of the signal's resolution
     */
    public static double share(Indicator indicator, Signal signal, long value) {
        if (indicator.kind().refreshes() && indicator.kind() != Kind.LED_BAR) {
            return 1;
        }
        double level = Math.min(1, Math.max(0, (double) (value - signal.lowest()) / signal.steps()));
        return indicator.kind() == Kind.BACKLIGHT_ZONE
                ? indicator.dimming().curve().brightness(level)
                : level;
    }

    /** What it takes with this share of it on, uA; what nobody stated counts as nothing. */
    public static long microamps(Draws draws, double share) {
        long rest = draws.rest().isKnown() ? draws.rest().microamps() : 0;
        long active = draws.active().isKnown() ? draws.active().microamps() : 0;
        return rest + Math.round((active - rest) * share);
    }

    /** What it takes beyond its usual current as it starts, uA. */
    public static long startMicroamps(Draws draws) {
        return draws.active().isKnown()
                ? draws.greatest().microamps() - draws.active().microamps()
                : 0;
    }
}
