package dropline.harness.recording;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What the first bytes of a text tell before it is read: its charset, its form, the separator of a table.
 *
 * @param text the beginning of it
 * @param charset told by a byte order mark, else UTF-8
 */
record TextLook(String text, Charset charset) {
    private static final String SEPARATORS = "\t;,";

    static TextLook at(byte[] first) {
        Charset charset = charset(first);
        return new TextLook(new String(first, charset), charset);
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

    /** Whether it begins as a JSON object does, and so is no table. */
    boolean isJson() {
        return firstCharacter(0) == '{';
    }

    /** Whether it begins with the names of a table's columns, as no file of keys and values does. */
    boolean isTable() {
        List<String> names = names();
        return names.size() > 1
                && binary() == null
                && names.stream().noneMatch(name -> name.contains(": ") || name.endsWith(":") || name.startsWith("#"));
    }

    /** Whether it begins as a JSON list of objects does, which is not a line each. */
    boolean isJsonList() {
        return firstCharacter(0) == '[' && firstCharacter(text.indexOf('[') + 1) == '{';
    }

    /** The names in the first line; none if that is no line of a table. */
    List<String> names() {
        try (CsvReader<CsvRecord> lines =
                CsvReader.builder().fieldSeparator(separator()).ofCsvRecord(text.substring(isMarked() ? 1 : 0))) {
            return lines.stream().findFirst().map(CsvRecord::getFields).orElse(List.of());
        } catch (CsvParseException | IOException e) {
            return List.of();
        }
    }

    private boolean isMarked() {
        return text.startsWith("\uFEFF");
    }

    /** The first character from there on that is no blank; 0 if there is none. */
    private char firstCharacter(int from) {
        for (int i = Math.max(from, isMarked() ? 1 : 0); i < text.length(); i++) {
            if (!Character.isWhitespace(text.charAt(i))) {
                return text.charAt(i);
            }
        }
        return 0;
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
