package dropline.harness.yaml;

/** A YAML document's text made of its tree: every key on a line of its own, without comments. */
public final class TreeText {
    private static final String STEP = "  ";

    private final StringBuilder text = new StringBuilder();

    private TreeText() {}

    /** The text of a mapping; reading it gives the same tree, places apart. */
    public static String of(Tree.Mapping tree) {
        TreeText made = new TreeText();
        made.entries(tree, "");
        return made.text.toString();
    }

    /** What stands at a key, on one line. */
    public static String inline(Tree tree) {
        if (tree instanceof Tree.Mapping mapping) {
            return "{"
                    + String.join(
                            ", ",
                            mapping.entries().stream()
                                    .map(entry -> scalar(entry.key()) + ": " + inline(entry.value()))
                                    .toList())
                    + "}";
        }
        if (tree instanceof Tree.Sequence sequence) {
            return "["
                    + String.join(
                            ", ",
                            sequence.items().stream().map(TreeText::inline).toList()) + "]";
        }
        return tree instanceof Tree.Scalar scalar ? scalar(scalar) : "";
    }

    private void entries(Tree.Mapping mapping, String indent) {
        for (Tree.Entry entry : mapping.entries()) {
            text.append(indent).append(scalar(entry.key())).append(':');
            value(entry.value(), indent);
        }
    }

    private void value(Tree value, String indent) {
        if (value instanceof Tree.Mapping mapping && !mapping.entries().isEmpty()) {
            text.append('\n');
            entries(mapping, indent + STEP);
        } else if (value instanceof Tree.Sequence sequence && !sequence.items().isEmpty()) {
            text.append('\n');
            for (Tree item : sequence.items()) {
                text.append(indent)
                        .append(STEP)
                        .append("- ")
                        .append(inline(item))
                        .append('\n');
            }
        } else {
            String inline = inline(value);
            text.append(inline.isEmpty() ? "" : " ").append(inline).append('\n');
        }
    }

    /** What was plain may stay so wherever it is safe; in braces and brackets more is not. */
    private static String scalar(Tree.Scalar scalar) {
        return scalar.isNothing() || (!scalar.quoted() && isPlain(scalar.text()))
                ? scalar.text()
                : quoted(scalar.text());
    }

    private static boolean isPlain(String text) {
        return text.chars().noneMatch(letter -> ",[]{}#\n".indexOf(letter) >= 0) && !text.contains(": ");
    }

    private static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            char letter = text.charAt(i);
            switch (letter) {
                case '"', '\\' -> quoted.append('\\').append(letter);
                case '\n' -> quoted.append("\\n");
                case '\t' -> quoted.append("\\t");
                case '\r' -> quoted.append("\\r");
                default -> quoted.append(letter);
            }
        }
        return quoted.append('"').toString();
    }
}
