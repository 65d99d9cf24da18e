package dropline.harness.cli;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;

/** Spoils sound texts: bytes changed, lost, doubled and moved, pieces that mean something put in at random. */
final class Spoiler {
    private static final List<String> PIECES = List.of(
            ": ",
            "- ",
            "\n",
            "\r\n",
            "\t",
            "  ",
            "{",
            "}",
            "[",
            "]",
            "\"",
            "'",
            "#",
            "&a ",
            "*a",
            "? ",
            "!!binary ",
            "---\n",
            "...\n",
            "%YAML 1.1\n",
            "|\n",
            ">-\n",
            "<<: *a",
            "~",
            "null",
            "like: ",
            "include: .\n",
            "include: [pit.yaml]\n",
            "..",
            "-1",
            "0",
            "1e309",
            "NaN",
            "99999999999999999999",
            "0x",
            ",",
            ";",
            "\u0000",
            "\u0085",
            "\u2028",
            "\ufeff",
            "\ud800",
            "\udc00",
            "\ud83d\ude00",
            "#".repeat(300),
            "[".repeat(60),
            "{a: ".repeat(40),
            "a".repeat(5_000));

    private final Random random;

    Spoiler(long seed) {
        random = new Random(seed);
    }

    /** The text with one to six things wrong with it; perhaps nothing that matters. */
    String spoilt(String sound) {
        StringBuilder text = new StringBuilder(sound);
        for (int i = 1 + random.nextInt(6); i > 0; i--) {
            int at = random.nextInt(text.length() + 1);
            int end = Math.min(text.length(), at + random.nextInt(40));
            switch (random.nextInt(6)) {
                case 0 -> text.delete(at, end);
                case 1 -> text.insert(at, PIECES.get(random.nextInt(PIECES.size())));
                case 2 -> text.replace(at, Math.min(text.length(), at + 1), PIECES.get(random.nextInt(PIECES.size())));
                case 3 -> text.insert(at, text.substring(at, end));
                case 4 -> text.insert(random.nextInt(text.length() + 1), text.substring(at, end));
                default -> text.insert(at, (char) random.nextInt(0x250));
            }
        }
        return text.toString();
    }

    /** The same as bytes, of which a few may no longer be letters. */
    byte[] spoiltBytes(String sound) {
        byte[] bytes = spoilt(sound).getBytes(StandardCharsets.UTF_8);
        for (int i = random.nextInt(3); i > 0 && bytes.length > 0; i--) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return bytes;
    }
}
