package dropline.harness.cli;

/** A file or an argument is wrong; the message says which and what to do, and is all that a person is shown. */
final class WrongInput extends RuntimeException {
    private static final long serialVersionUID = 1L;

    WrongInput(String message) {
        super(message);
    }

    WrongInput(String message, Throwable cause) {
        super(message, cause);
    }
}
