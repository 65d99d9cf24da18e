package dropline.harness.recording;

/** A stretch of a compact recording is not as it was written; the message says in what. */
final class DamageException extends Exception {
    private static final long serialVersionUID = 1L;

    DamageException(String message) {
        super(message);
    }
}
