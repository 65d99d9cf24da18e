package dropline.bus.pit;

/**
 * How a board makes its own voltage of what its supply brings.
 *
 * @param converter what does it
 * @param outputVolts what it makes, V
 * @param efficiency what of the power a switching one passes on, above 0, up to 1; else 1
 * @param worksDownToVolts lowest voltage at its supply terminals at which it works, V; 0 where nobody said
 * @param usb whether it is tied to a USB port as well
 * @param isolated whether that port is isolated from it, or its 5 V wire cut
 */
public record Inlet(
        Converter converter,
        double outputVolts,
        double efficiency,
        double worksDownToVolts,
        boolean usb,
        boolean isolated) {
    /** Nothing said: fed as it is. */
    public static final Inlet PLAIN = new Inlet(Converter.NONE, 5, 1, 0, false, false);

    /** What makes a board's voltage. */
    public enum Converter {
        /** Nothing: the board runs at its supply's voltage. */
        NONE,
        /** Passes the current on and turns the voltage that is too much into heat. */
        LINEAR,
        /** Passes the power on, less its losses: it takes more current as its supply sinks. */
        SWITCHING
    }

    public Inlet {
        if (!(outputVolts > 0) || !(efficiency > 0 && efficiency <= 1) || worksDownToVolts < 0) {
            throw new IllegalArgumentException("a converter needs volts above 0 and an efficiency up to 1: output="
                    + outputVolts + " efficiency=" + efficiency + " worksDownTo=" + worksDownToVolts);
        }
    }
}
