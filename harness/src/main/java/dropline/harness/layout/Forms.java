package dropline.harness.layout;

import dropline.harness.yaml.Group;
import dropline.harness.yaml.KeyCode;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.protocol.custom.BinaryForm;
import dropline.protocol.custom.DigitsForm;
import dropline.protocol.custom.DigitsForm.Style;
import dropline.protocol.custom.FloatForm;
import dropline.protocol.custom.NumberForm;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How a number is written on the wire, in words: {@code uint16}, {@code digits 4}, {@code hex up to 8}. */
final class Forms {
    static final String WORDS = "how the number is written: uint8, uint16, uint24, uint32, int8, int16, int24, int32,"
            + " float32, float64, digits 4, signed 5, padded 5 or hex 2 (digits, signed and hex also as: digits up"
            + " to 4)";
    private static final Pattern BINARY = Pattern.compile("(u?)int(8|16|24|32)");
    private static final Pattern TEXT = Pattern.compile("(digits|signed|padded|hex)( up to)? ([0-9]{1,4})");
    private static final Map<String, Boolean> ORDERS = Map.of("big", false, "little", true);

    private final Report report;
    private final boolean littleEndian;

    /** @param littleEndian the order of bytes where a field does not say */
    Forms(Report report, boolean littleEndian) {
        this.report = report;
        this.littleEndian = littleEndian;
    }

    static Optional<Boolean> order(Group group) {
        return group.choice("order", ORDERS);
    }

    /** The form under a key that must be there; {@code order} beside it counts. */
    Optional<NumberForm> read(Group group, String key) {
        return read(group, key, group.needText(key, WORDS));
    }

    /** The form under a key, or an unsigned binary number of so many bits where it is left out. */
    Optional<NumberForm> readOr(Group group, String key, int bits) {
        if (group.has(key)) {
            return read(group, key);
        }
        return Optional.of(new BinaryForm(bits / 8, false, order(group).orElse(littleEndian)));
    }

    private Optional<NumberForm> read(Group group, String key, Optional<Tree.Scalar> text) {
        boolean little = order(group).orElse(littleEndian);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        String words = text.get().text();
        Matcher binary = BINARY.matcher(words);
        if (binary.matches()) {
            int bytes = Integer.parseInt(binary.group(2)) / 8;
            return Optional.of(new BinaryForm(bytes, binary.group(1).isEmpty(), little));
        }
        if (words.equals("float32") || words.equals("float64")) {
            if (!key.equals("value")) {
                report.at(text.get(), key, KeyCode.WRONG_TYPE, "a whole number: " + WORDS, null);
                return Optional.empty();
            }
            return Optional.of(new FloatForm(words.equals("float32") ? 4 : 8, little));
        }
        Matcher digits = TEXT.matcher(words);
        if (digits.matches()) {
            return digits(text.get(), key, digits);
        }
        report.at(text.get(), key, KeyCode.WRONG_TYPE, WORDS, null);
        return Optional.empty();
    }

    private Optional<NumberForm> digits(Tree.Scalar text, String key, Matcher words) {
        Style style = Style.valueOf(words.group(1).toUpperCase(Locale.ROOT));
        boolean free = words.group(2) != null;
        if (free && style == Style.PADDED) {
            String fix = "write " + key + ": padded " + words.group(3) + ", or signed up to " + words.group(3);
            report.at(text, key, KeyCode.WRONG_TYPE, "a fixed width, since spaces fill it up", fix);
            return Optional.empty();
        }
        int width = Integer.parseInt(words.group(3));
        int least = style == Style.SIGNED ? 2 : 1;
        int most = style == Style.HEX ? 8 : 18;
        if (width < least || width > most) {
            report.at(text, key, KeyCode.OUT_OF_RANGE, style.word() + " " + least + ".." + most, null);
            return Optional.empty();
        }
        return Optional.of(new DigitsForm(style, width, free));
    }
}
