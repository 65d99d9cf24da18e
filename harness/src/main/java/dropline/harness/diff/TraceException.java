package dropline.harness.diff;

import java.io.IOException;

/** A file is no trace, or not of the same pit as the other; the message says which and why. */
public final class TraceException extends IOException {
    private static final long serialVersionUID = 1L;

    TraceException(String message) {
        super(message);
    }
}
