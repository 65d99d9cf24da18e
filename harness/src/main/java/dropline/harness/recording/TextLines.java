package dropline.harness.recording;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.util.Arrays;

/** A text's lines, one at a time, each of bounded length; ended by LF, CR LF or the end. */
final class TextLines {
    /** Characters of a line; what is longer cannot be held. */
    static final int LONGEST = 1 << 22;

    private final Reader in;
    private final char[] read = new char[1 << 14];
    private int at;
    private int end;
    private char[] line = new char[1 << 10];
    private int length;
    private boolean tooLong;
    private boolean whole;
    private long number;

    TextLines(InputStream in, Charset charset) {
        this.in = new InputStreamReader(in, charset);
    }

    /** Takes in the next line; false at the end. */
    boolean next() throws IOException {
        length = 0;
        tooLong = false;
        whole = false;
        boolean any = false;
        while (!whole && (at < end || fill())) {
            any = true;
            takeToLineEnd();
        }
        number += any ? 1 : 0;
        if (number == 1 && length > 0 && line[0] == '\uFEFF') {
            line[0] = ' ';
        }
        return any;
    }

    /** Counted from 1. */
    long number() {
        return number;
    }

    /** The characters; only the first {@link #length()} are the line's. */
    char[] characters() {
        return line;
    }

    int length() {
        return length;
    }

    /** Whether it was longer than can be held; its characters are then not all there. */
    boolean isTooLong() {
        return tooLong;
    }

    /** Whether a line end stood behind it. */
    boolean isWhole() {
        return whole;
    }

    private boolean fill() throws IOException {
        at = 0;
        end = Math.max(0, in.read(read));
        return end > 0;
    }

    private void takeToLineEnd() {
        int from = at;
        while (at < end && read[at] != '\n') {
            at++;
        }
        int count = at - from;
        if (length + count > LONGEST) {
            tooLong = true;
        } else {
            if (length + count > line.length) {
                line = Arrays.copyOf(line, Math.max(length + count, 2 * line.length));
            }
            System.arraycopy(read, from, line, length, count);
            length += count;
        }
        if (at < end) {
            at++;
            whole = true;
        }
    }
}
