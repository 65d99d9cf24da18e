package dropline.harness.listen;

import java.io.Closeable;
import java.io.IOException;

/** Where a wire's level changes, one after the other. */
interface Edges extends Closeable {
    /** Goes to the next; false at the end. */
    boolean next() throws IOException;

    /** When it is, ns. */
    long nanos();

    /** The level from then on, 0 or 1. */
    int level();
}
