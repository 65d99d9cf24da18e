package dropline.harness.record;

/** A recording cannot begin as it was asked for; the message says why and what to do. */
public final class RefusedException extends Exception {
    private static final long serialVersionUID = 1L;

    RefusedException(String why) {
        super(why);
    }
}
