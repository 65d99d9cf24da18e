package dropline.bus.avr.core;

/** Who asks for interrupts, and hears when one is served. */
@FunctionalInterface
public interface Served {
    /** The processor goes to a vector: the flag behind it is cleared, where the hardware does that. */
    void served(int vector);
}
