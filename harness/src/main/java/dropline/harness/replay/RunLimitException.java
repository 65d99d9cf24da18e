package dropline.harness.replay;

/** A run was stopped at one of its limits; the message says at which, and what to do. */
public final class RunLimitException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    RunLimitException(String message) {
        super(message);
    }
}
