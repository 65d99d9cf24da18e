package dropline.harness.pitfile;

import dropline.harness.yaml.Place;
import dropline.harness.yaml.Tree;

/** Where the parts of a YAML text begin and end, as positions in it. */
final class YamlLines {
    private final String text;
    private final int[] starts;

    YamlLines(String text) {
        this.text = text;
        int lines = 1;
        for (int i = 0; i < text.length(); i++) {
            lines += text.charAt(i) == '\n' ? 1 : 0;
        }
        starts = new int[lines];
        int line = 0;
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) == '\n') {
                starts[++line] = i + 1;
            }
        }
    }

    /** Where a place is. */
    int at(Place place) {
        return text.offsetByCodePoints(starts[place.line() - 1], place.column() - 1);
    }

    /** The colon that follows a key. */
    int colonAfter(Tree.Scalar key) {
        return text.indexOf(':', end(key));
    }

    /** Whether a group stands in braces. */
    boolean isFlow(Tree group) {
        char first = text.charAt(at(group.place()));
        return first == '{' || first == '[';
    }

    /** Behind the last character of an entry's value, or its colon where it has none. */
    int end(Tree.Entry entry) {
        boolean nothing = entry.value() instanceof Tree.Scalar scalar && scalar.isNothing();
        return nothing ? colonAfter(entry.key()) + 1 : end(entry.value());
    }

    private int end(Tree value) {
        int from = at(value.place());
        if (value instanceof Tree.Scalar scalar) {
            return scalar.quoted() ? endOfQuoted(from) : endOfPlain(from, scalar);
        }
        if (isFlow(value)) {
            return endOfFlow(from);
        }
        if (value instanceof Tree.Mapping mapping) {
            return end(mapping.entries().get(mapping.entries().size() - 1));
        }
        if (value instanceof Tree.Sequence list) {
            return end(list.items().get(list.items().size() - 1));
        }
        throw new AssertionError(value);
    }

    private int endOfPlain(int from, Tree.Scalar scalar) {
        if (!text.startsWith(scalar.text(), from)) {
            throw new PitEdits.NotEditable("'" + scalar.found() + "' in line "
                    + scalar.place().line() + " goes on over several lines; write it in one");
        }
        return from + scalar.text().length();
    }

    private int endOfQuoted(int from) {
        char quote = text.charAt(from);
        if (quote != '"' && quote != '\'') {
            throw new PitEdits.NotEditable("a block of text cannot be edited; write it in one line, in quotes");
        }
        int at = from + 1;
        while (text.charAt(at) != quote || (quote == '\'' && at + 1 < text.length() && text.charAt(at + 1) == quote)) {
            at += (quote == '"' && text.charAt(at) == '\\') || text.charAt(at) == quote ? 2 : 1;
        }
        return at + 1;
    }

    private int endOfFlow(int from) {
        int depth = 0;
        int at = from;
        do {
            char here = text.charAt(at);
            boolean begins = at > 0 && " ,[{:\n".indexOf(text.charAt(at - 1)) >= 0;
            if ((here == '"' || here == '\'') && begins) {
                at = endOfQuoted(at);
            } else if (here == '#' && at > 0 && Character.isWhitespace(text.charAt(at - 1))) {
                at = endOfLine(at);
            } else {
                depth += here == '{' || here == '[' ? 1 : here == '}' || here == ']' ? -1 : 0;
                at++;
            }
        } while (depth > 0);
        return at;
    }

    /** Where the line of a position ends: its line feed, or the end of the text. */
    int endOfLine(int at) {
        int end = text.indexOf('\n', at);
        return end < 0 ? text.length() : end;
    }

    /** The first position from here on that is no blank and no line feed. */
    int skipBlanks(int from) {
        int at = from;
        while (at < text.length() && (text.charAt(at) == ' ' || text.charAt(at) == '\n')) {
            at++;
        }
        return at;
    }

    /** Where the line of a position starts, or the comment lines right above it. */
    int startOfComment(int at) {
        int start = text.lastIndexOf('\n', at - 1) + 1;
        while (start > 0) {
            int before = text.lastIndexOf('\n', start - 2) + 1;
            if (!text.substring(before, start).strip().startsWith("#")) {
                return start;
            }
            start = before;
        }
        return start;
    }
}
