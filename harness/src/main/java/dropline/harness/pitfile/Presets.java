package dropline.harness.pitfile;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The adapters and profiles that every pit file may name: {@code presets.yaml} beside this class. */
final class Presets {
    private static final String FILE = "presets.yaml";
    private static final Section ROOT = Section.one("", "", java.util.List.of(), BusKeys.ADAPTERS, BusKeys.PROFILES);

    private Presets() {}

    /** A group that holds the adapters and profiles. */
    static Block read() {
        Report report = new Report(FILE);
        Tree tree = TreeReader.read(FILE, text(), report).orElseThrow(() -> new AssertionError(report.list()));
        Block root = new BlockReader(report).read(ROOT, new Tree.Scalar("", true, 1, 1), tree);
        if (!report.isEmpty()) {
            throw new AssertionError("presets must be readable: " + report.list());
        }
        return root;
    }

    private static String text() {
        try (InputStream in = Presets.class.getResourceAsStream(FILE)) {
            if (in == null) {
                throw new AssertionError("presets must lie beside their class: file=" + FILE);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
