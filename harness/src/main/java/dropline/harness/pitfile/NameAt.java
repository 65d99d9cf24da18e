package dropline.harness.pitfile;

import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.Optional;

/** A name of another part, kept with its place. */
final class NameAt extends Type.OfText<Tree.Scalar> {
    NameAt(String words) {
        super(words);
    }

    @Override
    Optional<Tree.Scalar> readText(Tree.Scalar text, String key, Report report) {
        return Optional.of(text);
    }
}
