package dropline.harness.stream;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** One datagram or one line, as bytes and, if it is text, as characters. Used again for the next. */
final class Message {
    private static final int LONGEST_SHOWN = 200;
    private static final int MOST_BYTES_SHOWN = 32;

    private byte[] bytes = new byte[0];
    private int length;
    private boolean text;
    private char[] chars = new char[2048];
    private int charCount;

    /** Takes a message; its bytes are not copied. Text ends before the zeros some senders fill up with. */
    void set(byte[] from, int count) {
        bytes = from;
        length = count;
        int end = count;
        while (end > 0 && from[end - 1] == 0) {
            end--;
        }
        if (chars.length < end) {
            chars = new char[end];
        }
        charCount = 0;
        int at = 0;
        while (at < end && plain(from[at])) {
            chars[at] = (char) from[at];
            at++;
        }
        charCount = at;
        text = at == end && (end > 0 || count == 0) || decode(end);
    }

    private static boolean plain(byte b) {
        return b >= ' ' || b == '\t' || b == '\n' || b == '\r';
    }

    /** UTF-8 or, where it is none, Latin-1; no text where a control code stands. */
    private boolean decode(int end) {
        for (int i = 0; i < end; i++) {
            if (bytes[i] >= 0 && !plain(bytes[i])) {
                return false;
            }
        }
        if (end == 0) {
            return false;
        }
        String decoded;
        try {
            decoded = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes, 0, end))
                    .toString();
        } catch (CharacterCodingException e) {
            decoded = new String(bytes, 0, end, StandardCharsets.ISO_8859_1);
        }
        String unmarked = decoded.startsWith("\uFEFF") ? decoded.substring(1) : decoded;
        unmarked.getChars(0, unmarked.length(), chars, 0);
        charCount = unmarked.length();
        return true;
    }

    boolean isText() {
        return text;
    }

    /** Whether it is text and says nothing. */
    boolean isBlank() {
        for (int i = 0; text && i < charCount; i++) {
            if (chars[i] > ' ') {
                return false;
            }
        }
        return text;
    }

    byte[] bytes() {
        return bytes;
    }

    int length() {
        return length;
    }

    /** The characters; only the first {@link #charCount()} count. */
    char[] chars() {
        return chars;
    }

    int charCount() {
        return charCount;
    }

    /** As a person may be shown it: one line, not too long. */
    String shown() {
        StringBuilder shown = new StringBuilder();
        if (text) {
            for (int i = 0; i < charCount && i < LONGEST_SHOWN; i++) {
                shown.append(Character.isISOControl(chars[i]) ? ' ' : chars[i]);
            }
            return shown.append(charCount > LONGEST_SHOWN ? "..." : "")
                    .toString()
                    .strip();
        }
        for (int i = 0; i < length && i < MOST_BYTES_SHOWN; i++) {
            shown.append(String.format(Locale.ROOT, "%02X ", bytes[i]));
        }
        return shown.append(length > MOST_BYTES_SHOWN ? "... " : "")
                .append("(")
                .append(length)
                .append(length == 1 ? " byte)" : " bytes)")
                .toString();
    }
}
