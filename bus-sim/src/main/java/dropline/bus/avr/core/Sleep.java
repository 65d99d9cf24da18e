package dropline.bus.avr.core;

/** What SLEEP comes to. */
@FunctionalInterface
public interface Sleep {
    /** It does nothing, as where sleeping is not enabled. */
    Sleep NONE = cycle -> false;

    /** Whether the processor now sleeps; its peripherals go on. */
    boolean begins(long cycle);
}
