package dropline.harness.survive;

/** The faults do not fit into the recording; the message says why and what to do. */
public final class SurviveException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    SurviveException(String message) {
        super(message);
    }
}
