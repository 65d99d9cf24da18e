package dropline.bus.pit;

/**
 * How a node's UART meets the pair.
 *
 * @param driver what it drives
 * @param receiver what it hears while it sends
 * @param samplesPerBit 16, or 8 at double speed
 */
public record Transceiver(Driver driver, Receiver receiver, int samplesPerBit) {

    /** An enable line, a receiver that is off while sending, sixteen samples a bit. */
    public static final Transceiver USUAL = new Transceiver(Driver.ENABLE_LINE, Receiver.OFF_WHILE_SENDING, 16);

    /** What a transceiver drives while it sends. */
    public enum Driver {
        /** Ones and zeros, from its enable lead to the end of its release tail. */
        ENABLE_LINE,
        /** Ones and zeros, from its first start bit until the hold time (its release tail) after its last character. */
        AUTOMATIC,
        /** Zeros; ones are left to the bias. */
        ZEROS_ONLY
    }

    /** What a receiver's output does while its node sends. */
    public enum Receiver {
        /** Hears its own node too. */
        ALWAYS_ON,
        /** Off, its output pulled up. */
        OFF_WHILE_SENDING,
        /** Off, its output floating. */
        FLOATING_WHILE_SENDING
    }

    public Transceiver {
        if (samplesPerBit != 8 && samplesPerBit != 16) {
            throw new IllegalArgumentException("samples per bit must be 8 or 16: samplesPerBit=" + samplesPerBit);
        }
    }
}
