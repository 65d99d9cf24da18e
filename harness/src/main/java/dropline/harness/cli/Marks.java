package dropline.harness.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicLong;

/** How often somebody who watches has typed {@code m} and Enter: I saw it now. */
final class Marks {
    private final AtomicLong count = new AtomicLong();

    /** Counts what is typed from now on; where nobody can type, nothing. */
    static Marks typedAt(Console console) {
        Marks marks = new Marks();
        if (console.terminal()) {
            Thread reader =
                    new Thread(() -> marks.read(new InputStreamReader(System.in, Charset.defaultCharset())), "marks");
            reader.setDaemon(true);
            reader.start();
        }
        return marks;
    }

    void read(Reader typed) {
        try (BufferedReader lines = new BufferedReader(typed)) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (line.strip().toLowerCase(Locale.ROOT).equals("m")) {
                    count.incrementAndGet();
                }
            }
        } catch (IOException closed) {
            // nothing more is typed
            return;
        }
    }

    long count() {
        return count.get();
    }
}
