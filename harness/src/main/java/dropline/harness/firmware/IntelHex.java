package dropline.harness.firmware;

import dropline.protocol.Bytes;
import java.util.List;
import java.util.Locale;

/**
 * Intel HEX (Intel, "Hexadecimal Object File Format Specification", revision A, 1988): data, end of file, and extended
 * and start addresses, segmented and linear. Start addresses are understood and not used: a chip begins where its fuses
 * say.
 */
final class IntelHex {
    private static final int FRAME = 5;

    private final Collected into;
    private long base;
    private boolean isEnded;
    private int records;

    private IntelHex(Collected into) {
        this.into = into;
    }

    static void read(List<String> lines, Collected into) {
        IntelHex hex = new IntelHex(into);
        int number = 0;
        for (String line : lines) {
            number++;
            if (!line.isBlank()) {
                hex.record(number, line.strip());
            }
            if (into.isWrong() && !line.isBlank() && !line.strip().startsWith(":") && hex.records == 0) {
                // it is no such file at all: once is enough
                return;
            }
        }
        if (!hex.isEnded && !into.isWrong()) {
            into.wrong(
                    number,
                    "CUT_OFF",
                    null,
                    "a record that ends the file, :00000001FF",
                    "build the file anew: its end is missing");
        }
    }

    private void record(int line, String text) {
        if (isEnded) {
            into.wrong(line, "AFTER_THE_END", text, "nothing after the record that ends the file", "remove the line");
            return;
        }
        int[] bytes = bytes(line, text);
        if (bytes.length == 0) {
            return;
        }
        int count = bytes[0];
        if (bytes.length != count + FRAME) {
            into.wrong(
                    line,
                    "WRONG_LENGTH",
                    bytes.length - FRAME + " bytes of data",
                    count + ", as its first byte says",
                    "build the file anew");
            return;
        }
        int sum = 0;
        for (int one : bytes) {
            sum += one;
        }
        if ((sum & 0xFF) != 0) {
            into.wrong(
                    line,
                    "WRONG_CHECKSUM",
                    hex(bytes[bytes.length - 1]),
                    hex(bytes[bytes.length - 1] - sum & 0xFF),
                    "the line is damaged: build the file anew");
            return;
        }
        records++;
        take(line, bytes, count);
    }

    private void take(int line, int[] bytes, int count) {
        int offset = bytes[1] << 8 | bytes[2];
        switch (bytes[3]) {
            case 0 -> data(line, bytes, count, offset);
            case 1 -> isEnded = true;
            case 2 -> {
                if (isLong(line, count, 2)) {
                    base = (long) (bytes[4] << 8 | bytes[5]) << 4;
                }
            }
            case 4 -> {
                if (isLong(line, count, 2)) {
                    base = (long) (bytes[4] << 8 | bytes[5]) << 16;
                }
            }
            case 3, 5 -> {
                boolean unused = isLong(line, count, 4);
            }
            default -> into.wrong(line, "UNKNOWN_RECORD", "type " + hex(bytes[3]), "types 00 to 05", null);
        }
    }

    private boolean isLong(int line, int count, int wanted) {
        if (count != wanted) {
            into.wrong(line, "WRONG_LENGTH", count + " bytes of data", wanted + " for this type of record", null);
        }
        return count == wanted;
    }

    private void data(int line, int[] bytes, int count, int offset) {
        int[] data = new int[count];
        System.arraycopy(bytes, 4, data, 0, count);
        if (count > 0) {
            into.program(line, base + offset, Bytes.of(data));
        }
    }

    private int[] bytes(int line, String text) {
        boolean isRecord = text.length() >= 1 + 2 * FRAME && text.charAt(0) == ':' && text.length() % 2 == 1;
        for (int i = 1; isRecord && i < text.length(); i++) {
            isRecord = Character.digit(text.charAt(i), 16) >= 0;
        }
        if (!isRecord) {
            into.wrong(
                    line,
                    "NO_RECORD",
                    text.length() > 60 ? text.substring(0, 60) + "..." : text,
                    "a colon and pairs of hexadecimal digits, as :100000000C9434000C943E000C943E000C943E0082",
                    "name a file in Intel HEX or ELF");
            return new int[0];
        }
        int[] bytes = new int[text.length() / 2];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = Integer.parseInt(text.substring(1 + 2 * i, 3 + 2 * i), 16);
        }
        return bytes;
    }

    private static String hex(int value) {
        return String.format(Locale.ROOT, "%02X", value);
    }
}
