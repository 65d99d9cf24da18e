package dropline.harness.pitfile;

import dropline.harness.yaml.Tree;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The reference part of {@code docs/pit-file.md}, made from the schema and the presets. */
final class ReferencePage {
    private final StringBuilder text = new StringBuilder();
    private final List<Described> described = new ArrayList<>();

    private record Described(List<Key<?>> keys, String path) {}

    private ReferencePage() {}

    /** Every key, then every preset, as Markdown. */
    static String markdown() {
        ReferencePage page = new ReferencePage();
        page.keys("the file itself", Schema.ROOT.keys());
        Schema.ROOT.sections().forEach(section -> page.section("", section));
        for (Shelf shelf : Shelf.values()) {
            page.presets(shelf);
        }
        return page.text.toString();
    }

    /** What can be wrong with a pit file, as a Markdown table of codes that leads to the examples. */
    static String problems() {
        StringBuilder table =
                new StringBuilder("| code | what is wrong | example | message |\n| --- | --- | --- | --- |\n");
        for (PitCode code : PitCode.values()) {
            String example = example(code);
            table.append("| `").append(code).append("` | ").append(code.words()).append(" | ");
            table.append(example.isEmpty() ? "" : "[file](pit-file/" + example + ")")
                    .append(" | [message](pit-file/");
            table.append(code).append(".txt) |\n");
        }
        return table.toString();
    }

    /** The name of a code's example file; empty for the one that has none. */
    static String example(PitCode code) {
        return switch (code) {
            case NO_SUCH_FILE -> "";
            case NOT_UTF8 -> code + ".latin1";
            default -> code + ".yaml";
        };
    }

    private void section(String outer, Section section) {
        boolean named = section.shape() == Section.Shape.NAMED;
        String path = (outer.isEmpty() ? "" : outer + ".") + section.name() + (named ? ".NAME" : "");
        text.append("\n### `")
                .append(path)
                .append("`\n\n")
                .append(capital(section.doc()))
                .append('.');
        if (section.need() == Key.Need.REQUIRED) {
            text.append(" Required.");
        }
        Key<?> shorthand = section.shorthand();
        if (shorthand != null) {
            text.append(" A plain value in its place is its `")
                    .append(shorthand.name())
                    .append("`.");
        }
        text.append('\n');
        for (Described earlier : described) {
            if (earlier.keys().equals(section.keys())) {
                text.append("\nThe keys are those of `").append(earlier.path()).append("`.\n");
                return;
            }
        }
        described.add(new Described(section.keys(), path));
        table(section.keys());
        section.sections().forEach(child -> section(path, child));
    }

    private void keys(String heading, List<Key<?>> keys) {
        text.append("### ").append(capital(heading)).append('\n');
        table(keys);
    }

    private void table(List<Key<?>> keys) {
        if (keys.isEmpty()) {
            return;
        }
        text.append("\n| key | value | default | what it is |\n| --- | --- | --- | --- |\n");
        for (Key<?> key : keys) {
            text.append("| `")
                    .append(key.name())
                    .append("` | ")
                    .append(cell(key.type().words()))
                    .append(key.isFigure() ? "; a figure" : "");
            text.append(" | ")
                    .append(leftOut(key))
                    .append(" | ")
                    .append(cell(key.doc()))
                    .append(" |\n");
        }
    }

    private static String leftOut(Key<?> key) {
        String standard = key.standard();
        if (standard != null) {
            return standard.isEmpty() ? "empty" : "`" + standard + "`";
        }
        return key.need() == Key.Need.REQUIRED ? "required" : "optional";
    }

    private void presets(Shelf shelf) {
        List<Tree.Entry> presets = shelf.named(Presets.read());
        if (presets.isEmpty()) {
            return;
        }
        text.append("\n### Presets of `")
                .append(shelf.path())
                .append("`\n\n| name | where its figures come from |\n| --- | --- |\n");
        for (Tree.Entry preset : presets) {
            text.append("| `").append(preset.key().text()).append("` | ");
            text.append(cell(source(preset))).append(" |\n");
        }
    }

    private static String source(Tree.Entry preset) {
        return preset.value() instanceof Tree.Mapping keys
                ? keys.get(BusKeys.FIGURES_FROM.name())
                        .map(e -> e.value().found())
                        .orElse("")
                : "as " + preset.value().found();
    }

    private static String cell(String words) {
        return words.replace("|", "\\|");
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
