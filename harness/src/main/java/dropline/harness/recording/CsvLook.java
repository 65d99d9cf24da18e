package dropline.harness.recording;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What the first bytes of a file tell before it is read as CSV.
 *
 * @param text the beginning of it
 */
record CsvLook(String text) {
    private static final String SEPARATORS = "\t;,";

    static CsvLook at(byte[] first) {
        return new CsvLook(new String(first, charset(first)));
    }

    private static Charset charset(byte[] first) {
        int a = first.length > 0 ? first[0] & 0xFF : 0;
        int b = first.length > 1 ? first[1] & 0xFF : 0;
        if (a == 0xFE && b == 0xFF) {
            return StandardCharsets.UTF_16BE;
        }
        return a == 0xFF && b == 0xFE ? StandardCharsets.UTF_16LE : StandardCharsets.UTF_8;
    }

    /** What shows that it is no text, or null. */
    @Nullable
    String binary() {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' && c != '\t' && c != '\r' && c != '\n' && c != '\f') {
                return String.format(Locale.ROOT, "no text: code 0x%02X at character %d", (int) c, i + 1);
            }
        }
        return null;
    }

    /**
     * The separator that stands most often in the first line, outside quotes; of equals, tab before semicolon before
     * comma.
     */
    char separator() {
        int[] count = new int[SEPARATORS.length()];
        boolean quoted = false;
        boolean begun = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            quoted ^= c == '"';
            boolean lineEnd = c == '\n' || c == '\r';
            if (lineEnd && begun && !quoted) {
                break;
            }
            begun |= !lineEnd;
            int which = SEPARATORS.indexOf(c);
            if (which >= 0 && !quoted) {
                count[which]++;
            }
        }
        int most = SEPARATORS.length() - 1;
        for (int i = most; i >= 0; i--) {
            most = count[i] >= count[most] ? i : most;
        }
        return count[most] == 0 ? ',' : SEPARATORS.charAt(most);
    }
}
