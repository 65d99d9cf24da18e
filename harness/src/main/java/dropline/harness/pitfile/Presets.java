package dropline.harness.pitfile;

import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** What every pit file may be like by name: {@code presets.yaml} beside this class. */
final class Presets {
    /** How problems and origins name the file they stand in. */
    static final String FILE = "presets";

    private static final String RESOURCE = "presets.yaml";

    private Presets() {}

    /** What they are, as a tree whose places lie in {@link #FILE}. */
    static Tree.Mapping read() {
        Report report = new Report();
        Tree tree = TreeReader.read(FILE, text(), report).orElseThrow(() -> new AssertionError(report.list()));
        BlockReader.check(tree, report);
        if (!report.isEmpty() || !(tree instanceof Tree.Mapping mapping)) {
            throw new AssertionError("presets must be readable: " + report.list());
        }
        return mapping;
    }

    private static String text() {
        try (InputStream in = Presets.class.getResourceAsStream(RESOURCE)) {
            if (in == null) {
                throw new AssertionError("presets must lie beside their class: file=" + RESOURCE);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
