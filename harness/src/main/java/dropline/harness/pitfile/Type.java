package dropline.harness.pitfile;

import dropline.harness.yaml.Form;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.Optional;

/** How the value of a key is written, and what it becomes. */
interface Type<T> {

    /** What to write, for a person: {@code time, 0 us..1 s}. */
    String words();

    /** The value, or empty with the reason reported. */
    Optional<T> read(Tree tree, String key, Report report);

    /** The same for a schema. */
    default Form form() {
        return Form.text();
    }

    /** A value scaled; empty where it cannot be, leaves what may be written, or is no other. */
    default Optional<T> scaled(T value, Scale scale) {
        return Optional.empty();
    }

    /** A type written as one piece of text. */
    abstract class OfText<T> implements Type<T> {
        private final String words;

        OfText(String words) {
            this.words = words;
        }

        @Override
        public final String words() {
            return words;
        }

        @Override
        public final Optional<T> read(Tree tree, String key, Report report) {
            if (tree instanceof Tree.Scalar scalar && !scalar.isNothing()) {
                return readText(scalar, key, report);
            }
            report.at(tree, key, PitCode.WRONG_TYPE, words, null);
            return Optional.empty();
        }

        abstract Optional<T> readText(Tree.Scalar text, String key, Report report);
    }
}
