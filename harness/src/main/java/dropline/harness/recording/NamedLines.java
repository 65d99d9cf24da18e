package dropline.harness.recording;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** The lines of a form that names its values, taken apart in the file's order. */
interface NamedLines {

    /** Opens the lines of a file; each pass through it opens them anew. */
    @FunctionalInterface
    interface Opening {
        NamedLines open(SourceStream source) throws IOException;
    }

    /** The next line, with what is wrong with it, until the next call; null at the end. */
    @Nullable
    NamedLine next() throws IOException;

    /** The unit of the times; what a line says of it counts from that line on. */
    TimeUnit unit();

    /** What was lost and could still be read past, a sentence each. */
    List<String> losses();
}
