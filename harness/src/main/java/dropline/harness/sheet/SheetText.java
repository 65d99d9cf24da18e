package dropline.harness.sheet;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;

/**
 * A spreadsheet's file as text. Spreadsheet programs save UTF-8 with or without a byte order mark, UTF-16 with one,
 * and, on Windows, the code page of Western Europe; the last is taken where the bytes are no UTF-8.
 *
 * @param text without a byte order mark and without the line {@code sep=;} by which some programs name the separator
 * @param firstLine line of the file that the text begins with, from 1
 * @param separator what stands between two cells
 */
record SheetText(String text, int firstLine, char separator) {
    private static final String SEPARATORS = ",;\t";
    private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

    static SheetText of(byte[] bytes) {
        String text = decoded(bytes);
        text = text.startsWith("\uFEFF") ? text.substring(1) : text;
        if (text.regionMatches(true, 0, "sep=", 0, 4) && text.length() > 4 && SEPARATORS.indexOf(text.charAt(4)) >= 0) {
            int end = text.indexOf('\n');
            return new SheetText(end < 0 ? "" : text.substring(end + 1), 2, text.charAt(4));
        }
        return new SheetText(text, 1, separator(text));
    }

    /** What shows that the file is no text, if anything does. */
    Optional<String> notText() {
        if (text.startsWith("PK\u0003\u0004")) {
            return Optional.of("a packed workbook (.xlsx or .ods)");
        }
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' && c != '\t' && c != '\r' && c != '\n' && c != '\f') {
                return Optional.of(String.format(Locale.ROOT, "no text: code 0x%02X at character %d", (int) c, i + 1));
            }
        }
        return Optional.empty();
    }

    /** Whether a quote is opened that nothing closes, so that the rest of the file reads as one cell. */
    boolean endsInQuotes() {
        return text.chars().filter(c -> c == '"').count() % 2 == 1;
    }

    private static String decoded(byte[] bytes) {
        int a = bytes.length > 0 ? bytes[0] & 0xFF : 0;
        int b = bytes.length > 1 ? bytes[1] & 0xFF : 0;
        if (a == 0xFF && b == 0xFE) {
            return new String(bytes, StandardCharsets.UTF_16LE);
        }
        if (a == 0xFE && b == 0xFF) {
            return new String(bytes, StandardCharsets.UTF_16BE);
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException notUtf8) {
            return new String(bytes, WINDOWS_1252);
        }
    }

    /** The separator that stands most often outside quotes; of equals, comma before semicolon before tab. */
    private static char separator(String text) {
        int[] count = new int[SEPARATORS.length()];
        boolean quoted = false;
        boolean blank = true;
        int rows = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            quoted ^= c == '"';
            int which = SEPARATORS.indexOf(c);
            if (which >= 0 && !quoted) {
                count[which]++;
            }
            rows += c == '\n' && !quoted && !blank ? 1 : 0;
            blank = c == '\n' || (blank && Character.isWhitespace(c) && c != '\t');
        }
        rows = Math.max(1, rows + (blank || quoted ? 0 : 1));
        // A semicolon or a tab between cells stands on every row; commas may stand in their text as well.
        for (int which = SEPARATORS.length() - 1; which > 0; which--) {
            if (count[which] >= rows) {
                return SEPARATORS.charAt(which);
            }
        }
        return ',';
    }
}
