package dropline.harness.listen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Which of several wires is meant. */
final class Wires {
    private static final int MOST_NAMED = 12;

    private Wires() {}

    /** Index of the one of this name, or of the only one. */
    static int choose(Path file, List<String> names, @Nullable String wanted) throws IOException {
        if (names.isEmpty()) {
            throw new IOException(file + ": there is no wire of one bit in it");
        }
        if (wanted == null && names.size() == 1) {
            return 0;
        }
        int found = wanted == null ? -1 : names.indexOf(wanted);
        if (found < 0) {
            throw new IOException(file + ": "
                    + (wanted == null ? "say which wire with --wire" : "no wire '" + wanted + "'")
                    + "; there are "
                    + String.join(", ", names.subList(0, Math.min(MOST_NAMED, names.size())))
                    + (names.size() > MOST_NAMED ? " and " + (names.size() - MOST_NAMED) + " more" : ""));
        }
        return found;
    }
}
