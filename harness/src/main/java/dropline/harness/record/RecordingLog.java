package dropline.harness.record;

import dropline.harness.report.Figures;
import java.io.BufferedWriter;
import java.io.Closeable;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** What happened during a recording, a line each, in a text file beside it. */
final class RecordingLog implements Closeable {
    private final BufferedWriter out;
    private boolean broken;

    RecordingLog(Path file) throws IOException {
        out = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
    }

    /** A line with its time in the recording, ns. */
    void line(long atNanos, String what) {
        if (broken) {
            return;
        }
        try {
            out.write(Figures.instant(atNanos) + "  " + what + "\n");
            out.flush();
        } catch (IOException e) {
            // Whatever is logged was also said; a log that cannot be written must not end the recording.
            broken = true;
        }
    }

    @Override
    public void close() {
        try {
            out.close();
        } catch (IOException e) {
            broken = true;
        }
    }
}
