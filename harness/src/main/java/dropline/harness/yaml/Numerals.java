package dropline.harness.yaml;

import dropline.protocol.Bytes;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** Numbers and bytes as people write them. */
public final class Numerals {
    private static final Pattern DECIMAL = Pattern.compile("[+-]?[0-9]{1,18}");
    private static final Pattern HEX = Pattern.compile("(?:0[xX])?([0-9A-Fa-f]{1,15})");
    private static final Pattern PAIRS = Pattern.compile("(?:0[xX])?[0-9A-Fa-f]{2}(?:[ ,]+(?:0[xX])?[0-9A-Fa-f]{2})*");

    private Numerals() {}

    /** Decimal, or hexadecimal with 0x before it. */
    public static Optional<Long> whole(String text) {
        if (DECIMAL.matcher(text).matches()) {
            return Optional.of(Long.parseLong(text));
        }
        return text.startsWith("0x") || text.startsWith("0X") ? hex(text) : Optional.empty();
    }

    /** Hexadecimal digits, with or without 0x before them. */
    public static Optional<Long> hex(String text) {
        var digits = HEX.matcher(text);
        return digits.matches() ? Optional.of(Long.parseLong(digits.group(1), 16)) : Optional.empty();
    }

    /** A whole number, decimal or hexadecimal with 0x, or what counts where it is left out. */
    public static int whole(Group group, String key, int least, int most, int standard) {
        String expected = "a whole number, " + least + ".." + most;
        Optional<Tree.Scalar> text = group.text(key, expected);
        if (text.isEmpty()) {
            return standard;
        }
        Optional<Long> number = whole(text.get().text());
        if (number.isEmpty()) {
            group.problem(text.get(), key, KeyCode.WRONG_TYPE, expected, null);
            return standard;
        }
        if (number.get() < least || number.get() > most) {
            group.problem(text.get(), key, KeyCode.OUT_OF_RANGE, expected, null);
            return standard;
        }
        return number.get().intValue();
    }

    /** A number written in hexadecimal digits, which must be there. */
    public static Optional<Long> needHex(Group group, String key, long most) {
        String expected = "hexadecimal digits, 0.." + Long.toHexString(most).toUpperCase(Locale.ROOT);
        Optional<Tree.Scalar> text = group.needText(key, expected);
        Optional<Long> number = text.flatMap(scalar -> hex(scalar.text()));
        if (text.isPresent() && (number.isEmpty() || number.get() > most)) {
            group.problem(
                    text.get(), key, number.isEmpty() ? KeyCode.WRONG_TYPE : KeyCode.OUT_OF_RANGE, expected, null);
            return Optional.empty();
        }
        return number;
    }

    /** Pairs of hexadecimal digits with spaces between them: {@code A5 5A}. */
    public static Optional<Bytes> pairs(String text) {
        if (!PAIRS.matcher(text).matches()) {
            return Optional.empty();
        }
        return Optional.of(Bytes.ofHex(text.replaceAll("0[xX]", "").replaceAll("[ ,]+", " ")));
    }

    /** Text of the 128 characters of ASCII. */
    public static Optional<Bytes> ascii(String text) {
        if (text.isEmpty() || !text.chars().allMatch(c -> c < 128)) {
            return Optional.empty();
        }
        byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
        return Optional.of(Bytes.copyOf(bytes, 0, bytes.length));
    }
}
