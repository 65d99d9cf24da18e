package dropline.harness.replay;

/** A run was stopped, at one of its limits or since it cannot go on; the message says why, and what to do. */
public final class StoppedRunException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    StoppedRunException(String message) {
        super(message);
    }
}
