package dropline.harness.pitfile;

import dropline.harness.layout.LayoutFile;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.protocol.custom.Custom;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/** The path of a layout file, which is read; it counts from the folder of the file it is written in. */
final class LayoutAt extends Type.OfText<Custom> {
    LayoutAt() {
        super("the path of a layout file, counted from the folder of this file");
    }

    @Override
    Optional<Custom> readText(Tree.Scalar text, String key, Report report) {
        try {
            Path path = Path.of(text.place().file())
                    .resolveSibling(text.text().replace('\\', '/'))
                    .normalize();
            return LayoutFile.read(path, text, report);
        } catch (InvalidPathException e) {
            report.at(text, key, PitCode.NO_SUCH_FILE, words(), "check the path");
            return Optional.empty();
        }
    }
}
