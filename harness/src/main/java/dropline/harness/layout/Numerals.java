package dropline.harness.layout;

import dropline.protocol.Bytes;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Pattern;

/** Numbers and bytes as people write them. */
final class Numerals {
    private static final Pattern DECIMAL = Pattern.compile("[+-]?[0-9]{1,18}");
    private static final Pattern HEX = Pattern.compile("(?:0[xX])?([0-9A-Fa-f]{1,15})");
    private static final Pattern PAIRS = Pattern.compile("(?:0[xX])?[0-9A-Fa-f]{2}(?:[ ,]+(?:0[xX])?[0-9A-Fa-f]{2})*");

    private Numerals() {}

    /** Decimal, or hexadecimal with 0x before it. */
    static Optional<Long> whole(String text) {
        if (DECIMAL.matcher(text).matches()) {
            return Optional.of(Long.parseLong(text));
        }
        return text.startsWith("0x") || text.startsWith("0X") ? hex(text) : Optional.empty();
    }

    /** Hexadecimal digits, with or without 0x before them. */
    static Optional<Long> hex(String text) {
        var digits = HEX.matcher(text);
        return digits.matches() ? Optional.of(Long.parseLong(digits.group(1), 16)) : Optional.empty();
    }

    /** Pairs of hexadecimal digits with spaces between them: {@code A5 5A}. */
    static Optional<Bytes> pairs(String text) {
        if (!PAIRS.matcher(text).matches()) {
            return Optional.empty();
        }
        return Optional.of(Bytes.ofHex(text.replaceAll("0[xX]", "").replaceAll("[ ,]+", " ")));
    }

    /** Text of the 128 characters of ASCII. */
    static Optional<Bytes> ascii(String text) {
        if (text.isEmpty() || !text.chars().allMatch(c -> c < 128)) {
            return Optional.empty();
        }
        byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
        return Optional.of(Bytes.copyOf(bytes, 0, bytes.length));
    }
}
