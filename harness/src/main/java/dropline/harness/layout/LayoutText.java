package dropline.harness.layout;

import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.custom.Boundary;
import dropline.protocol.custom.Boundary.Delimiters;
import dropline.protocol.custom.Boundary.Gap;
import dropline.protocol.custom.Custom;
import dropline.protocol.custom.CustomFrame;
import dropline.protocol.custom.Field;
import dropline.protocol.custom.FrameLayout;
import dropline.protocol.custom.Layout;
import dropline.protocol.custom.NumberForm;
import dropline.protocol.custom.Part;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;

/** A layout's frames as text: every byte of an example, and what it is. */
public final class LayoutText {
    private static final int BYTES_A_LINE = 8;

    private final Custom protocol;
    private final Layout layout;
    private final Trial trial;
    private final StringBuilder out = new StringBuilder();

    private LayoutText(Custom protocol, Trial trial) {
        this.protocol = protocol;
        this.layout = protocol.layout();
        this.trial = trial;
    }

    /** Every frame, tried with these values. */
    public static String of(Custom protocol, Trial trial) {
        LayoutText text = new LayoutText(protocol, trial);
        text.head();
        protocol.layout().frames().forEach(text::frame);
        return text.out.toString();
    }

    private void head() {
        out.append(layout.name())
                .append(": ")
                .append(boundary(layout.boundary()))
                .append('\n');
        out.append("At most ").append(layout.longest()).append(" characters in a frame.");
        out.append(protocol.canBroadcast() ? " State goes to all nodes at once" : " State cannot go to all nodes");
        out.append(protocol.canAddress() ? "; a poll can carry state.\n" : "; a poll carries none.\n");
        out.append(
                protocol.marksReplies()
                        ? "Replies cannot be taken for requests.\n"
                        : "A node cannot tell another's reply from a request by its bytes.\n");
        out.append("Tried with address ").append(trial.address());
        out.append(", counter ").append(trial.counter()).append(", values ");
        out.append(
                String.join(", ", trial.values().stream().map(String::valueOf).toList()));
        out.append(" of signals or controls 1, 2 and so on.\n");
    }

    static String boundary(Boundary boundary) {
        if (boundary instanceof Delimiters delimiters) {
            String start =
                    delimiters.start() == Delimiters.NO_START ? "" : "begin with " + hex(delimiters.start()) + " and ";
            Boundary.Escape escape = delimiters.escape();
            return "frames " + start + "end with " + hex(delimiters.end())
                    + (escape == null
                            ? "."
                            : "; those bytes inside a frame go as " + hex(escape.with()) + " and the byte with bits "
                                    + hex(escape.xor()) + " turned.");
        }
        if (boundary instanceof Gap gap) {
            String amount = BigDecimal.valueOf(gap.thousandths(), 3)
                    .stripTrailingZeros()
                    .toPlainString();
            String unit =
                    switch (gap.unit()) {
                        case CHARACTERS -> "characters";
                        case BITS -> "bits";
                        case MICROSECONDS -> "us";
                    };
            return "frames lie between silences of at least " + amount + " " + unit + ".";
        }
        return "frames are found by what they begin with and by their length.";
    }

    private void frame(FrameLayout frame) {
        CustomFrame tried = trial.frame(protocol, frame);
        List<Part> parts = protocol.parts(tried);
        int chars = parts.stream().mapToInt(part -> part.bytes().length()).sum();
        out.append('\n').append(frame.kind().word()).append(", ").append(chars).append(" characters");
        frame.items().ifPresent(items -> items(frame, items, tried.items().size()));
        out.append('\n');
        trial.replaced(protocol, frame).forEach(sentence -> out.append("  (" + sentence + ")\n"));
        int at = 0;
        for (Part part : parts) {
            at = part(at, part, meaning(frame, part, tried));
        }
    }

    private void items(FrameLayout frame, Field.Items items, int count) {
        String what = frame.kind() == FrameLayout.Kind.REPLY ? "control" : "signal";
        if (items.slots() > 0) {
            out.append(" whatever it carries: ").append(items.slots()).append(" slots");
        } else {
            out.append(" with ").append(count).append(' ').append(what).append(count == 1 ? "" : "s");
            out.append("; each adds ").append(items.eachChars());
            if (!items.numbered()) {
                out.append(", and all of a node's go each time");
            }
        }
    }

    private int part(int from, Part part, String meaning) {
        Bytes bytes = part.bytes();
        for (int i = 0; i < bytes.length(); i += BYTES_A_LINE) {
            Bytes line = Bytes.copyOf(bytes.toArray(), i, Math.min(BYTES_A_LINE, bytes.length() - i));
            String what = i == 0 ? part.name() + (meaning.isEmpty() ? "" : ": " + meaning) : "";
            out.append(String.format(Locale.ROOT, "  %3d  %-23s  %-8s  %s", from + i, line, readable(line), what)
                    .stripTrailing());
            out.append('\n');
        }
        return from + bytes.length();
    }

    private String meaning(FrameLayout frame, Part part, CustomFrame tried) {
        Field field = frame.fields().stream()
                .filter(f -> f.name().equals(part.name()))
                .findFirst()
                .orElse(null);
        if (field instanceof Field.Address address) {
            int value = frame.kind() == FrameLayout.Kind.STATE ? address.toAll() : tried.address();
            return value
                    + (frame.kind() == FrameLayout.Kind.STATE ? ", for all nodes" : "")
                    + plus(address.plus())
                    + as(address.form());
        }
        if (field instanceof Field.Counter counter) {
            return tried.counter() + plus(counter.plus()) + as(counter.form());
        }
        if (field instanceof Field.Length length) {
            String counts =
                    switch (length.counted()) {
                        case ITEMS -> "how many items";
                        case PAYLOAD -> "characters of the items";
                        case REST -> "characters that follow it";
                        case FRAME -> "characters of all fields";
                    };
            return counts + plus(length.plus()) + as(length.form());
        }
        if (field instanceof Field.Check check) {
            String first = check.first() == Field.Check.START
                    ? "start"
                    : frame.fields().get(check.first()).name();
            String last = frame.fields().get(check.last()).name();
            return check.sum() + " over " + first + ".." + last + as(check.form());
        }
        return field instanceof Field.Items items ? each(items) : "";
    }

    private static String each(Field.Items items) {
        List<String> parts = items.each().stream()
                .map(part -> part instanceof Field.Numeric numeric
                        ? part.name() + " as " + numeric.form()
                        : "\"" + readable(((Field.Constant) part).bytes()) + "\"")
                .toList();
        return "each " + String.join(", ", parts);
    }

    private static String plus(int plus) {
        return plus == 0 ? "" : plus > 0 ? ", " + plus + " added" : ", " + -plus + " taken off";
    }

    private static String as(NumberForm form) {
        return ", as " + form;
    }

    static String hex(int value) {
        return String.format(Locale.ROOT, "%02X", value);
    }

    /** As text, a dot for what cannot be printed. */
    static String readable(Bytes bytes) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < bytes.length(); i++) {
            text.append(bytes.at(i) > 32 && bytes.at(i) < 127 ? (char) bytes.at(i) : bytes.at(i) == 32 ? ' ' : '.');
        }
        return text.toString();
    }

    /** The character format that counts silences where a layout is tried without a segment. */
    static CharacterFormat format() {
        return CharacterFormat.EIGHT_N_ONE;
    }
}
