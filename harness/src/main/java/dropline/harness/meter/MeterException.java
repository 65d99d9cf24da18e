package dropline.harness.meter;

/** A reading that cannot be understood, or that is of no pair; the message says what to write. */
public final class MeterException extends Exception {
    private static final long serialVersionUID = 1L;

    MeterException(String message) {
        super(message);
    }
}
