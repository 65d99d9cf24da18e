package dropline.harness.layout;

import dropline.harness.yaml.Numerals;
import dropline.protocol.Bytes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Bytes as a person pastes them. */
public final class SeenBytes {
    private static final Pattern CHARACTER =
            Pattern.compile("\\\\x([0-9A-Fa-f]{2})|\\\\([nrt\\\\])|([^\\\\\\x80-\\uFFFF])");

    private SeenBytes() {}

    /** Pairs of hexadecimal digits, {@code |} between pieces with a silence between them; empty where it is none. */
    public static Optional<List<Bytes>> hex(String text) {
        List<Bytes> pieces = new ArrayList<>();
        for (String piece : text.split("\\|", -1)) {
            String stripped = piece.strip().replaceAll("\\s+", " ");
            if (stripped.isEmpty()) {
                continue;
            }
            Optional<Bytes> bytes = Numerals.pairs(stripped);
            if (bytes.isEmpty()) {
                return Optional.empty();
            }
            pieces.add(bytes.get());
        }
        return pieces.isEmpty() ? Optional.empty() : Optional.of(pieces);
    }

    /** Text with {@code \n}, {@code \r}, {@code \t}, {@code \\} and {@code \xHH}; empty where it is none. */
    public static Optional<Bytes> text(String text) {
        List<Integer> bytes = new ArrayList<>();
        Matcher matcher = CHARACTER.matcher(text);
        int at = 0;
        while (at < text.length()) {
            if (!matcher.find(at) || matcher.start() != at) {
                return Optional.empty();
            }
            bytes.add(value(matcher));
            at = matcher.end();
        }
        return bytes.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        Bytes.of(bytes.stream().mapToInt(Integer::intValue).toArray()));
    }

    private static int value(Matcher matcher) {
        if (matcher.group(1) != null) {
            return Integer.parseInt(matcher.group(1), 16);
        }
        if (matcher.group(2) == null) {
            return matcher.group(3).charAt(0);
        }
        return switch (matcher.group(2)) {
            case "n" -> '\n';
            case "r" -> '\r';
            case "t" -> '\t';
            default -> '\\';
        };
    }
}
