package dropline.bus.avr.core;

/** Something that happens at a cycle of its own. */
@FunctionalInterface
public interface Timed {
    /** It is due. */
    void happen(long cycle);
}
