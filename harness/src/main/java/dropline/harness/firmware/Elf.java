package dropline.harness.firmware;

import dropline.bus.avr.chip.Image;
import dropline.protocol.Bytes;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * ELF of 32 bits for AVR ("Tool Interface Standard Executable and Linking Format", version 1.2, 1995): what its program
 * headers load, and the names of its functions. The AVR tools place EEPROM at 0x810000 (avr-libc, "Memory Sections");
 * what lies above, fuses and the like, is left out.
 */
final class Elf {
    private static final int HEADER = 52;
    private static final int LITTLE_32 = 0x0101;
    private static final int EXECUTABLE = 2;
    private static final int AVR = 83;
    private static final int LOAD = 1;
    private static final int SYMBOLS = 2;
    private static final int FUNCTION = 2;
    private static final long DATA = 0x800000;
    private static final long EEPROM = 0x810000;
    private static final long FUSES = 0x820000;

    /** What the AVR tools' linker calls the end of a program's variables. */
    private static final String END = "_end";

    private final ByteBuffer bytes;
    private final Collected into;

    private Elf(byte[] bytes, Collected into) {
        this.bytes = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        this.into = into;
    }

    static boolean is(byte[] bytes) {
        return bytes.length >= 4 && bytes[0] == 0x7F && bytes[1] == 'E' && bytes[2] == 'L' && bytes[3] == 'F';
    }

    static void read(byte[] bytes, Collected into) {
        try {
            new Elf(bytes, into).all();
        } catch (IndexOutOfBoundsException cut) {
            into.wrong(0, "CUT_OFF", bytes.length + " bytes", "more, as its own headers say", "build the file anew");
        }
    }

    private void all() {
        if (bytes.capacity() < HEADER || (bytes.getShort(4) & 0xFFFF) != LITTLE_32 || word(18) != AVR) {
            into.wrong(0, "WRONG_MACHINE", null, "a program for an 8-bit AVR", "name what the AVR tools built");
            return;
        }
        if (word(16) != EXECUTABLE) {
            into.wrong(0, "NOT_LINKED", null, "an executable file", "name what the linker wrote, not one object of it");
            return;
        }
        int headers = bytes.getInt(28);
        for (int i = 0; i < word(44); i++) {
            load(headers + i * word(42));
        }
        int sections = bytes.getInt(32);
        for (int i = 0; i < word(48); i++) {
            int at = sections + i * word(46);
            if (bytes.getInt(at + 4) == SYMBOLS) {
                symbols(at, sections);
            }
        }
    }

    private int word(int at) {
        return bytes.getShort(at) & 0xFFFF;
    }

    private void load(int at) {
        int size = bytes.getInt(at + 16);
        long address = bytes.getInt(at + 12) & 0xFFFFFFFFL;
        if (bytes.getInt(at) != LOAD || size <= 0) {
            return;
        }
        if (size > bytes.capacity()) {
            throw new IndexOutOfBoundsException(size);
        }
        byte[] data = new byte[size];
        bytes.get(bytes.getInt(at + 4), data);
        Bytes loaded = Bytes.copyOf(data, 0, size);
        if (address < DATA) {
            into.program(0, address, loaded);
        } else if (address >= EEPROM && address < FUSES) {
            into.eeprom(0, address - EEPROM, loaded);
        }
    }

    private void symbols(int section, int sections) {
        int names = bytes.getInt(sections + bytes.getInt(section + 24) * word(46) + 16);
        int begin = bytes.getInt(section + 16);
        int end = begin + bytes.getInt(section + 20);
        for (int at = begin; at < end; at += 16) {
            int kind = bytes.get(at + 12) & 15;
            long value = bytes.getInt(at + 4) & 0xFFFFFFFFL;
            if (kind == FUNCTION && value < DATA) {
                into.function(new Image.Function(text(names + bytes.getInt(at)), (int) value, bytes.getInt(at + 8)));
            } else if (value > DATA
                    && value < EEPROM
                    && text(names + bytes.getInt(at)).equals(END)) {
                into.memoryEnd((int) (value - DATA));
            }
        }
    }

    private String text(int from) {
        int end = from;
        while (bytes.get(end) != 0) {
            end++;
        }
        return new String(bytes.array(), from, end - from, StandardCharsets.UTF_8);
    }
}
