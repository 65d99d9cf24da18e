package dropline.harness.firmware;

import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Image;
import dropline.harness.problem.Problem;
import dropline.protocol.Bytes;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** What has been read of a file so far, and what is wrong with it. */
final class Collected {
    private final String file;
    private final Chip chip;
    private final List<Problem> problems = new ArrayList<>();
    private final List<Image.Stretch> program = new ArrayList<>();
    private final List<Image.Stretch> eeprom = new ArrayList<>();
    private final List<Image.Function> functions = new ArrayList<>();
    private final Set<String> outside = new TreeSet<>();
    private int memoryEnd;

    Collected(String file, Chip chip) {
        this.file = file;
        this.chip = chip;
    }

    void wrong(int line, String code, @Nullable String found, @Nullable String expected, @Nullable String fix) {
        problems.add(new Problem(file, line, 0, "", code, found, expected, fix));
    }

    /** Bytes of the program; those that lie next to the last ones are joined to them. */
    void program(int line, long address, Bytes bytes) {
        if (isWithin(line, address, bytes.length(), chip.flashBytes(), "program memory")) {
            add(program, line, (int) address, bytes);
        }
    }

    void eeprom(int line, long address, Bytes bytes) {
        if (isWithin(line, address, bytes.length(), chip.eepromBytes(), "EEPROM")) {
            add(eeprom, line, (int) address, bytes);
        }
    }

    void function(Image.Function function) {
        functions.add(function);
    }

    void memoryEnd(int address) {
        memoryEnd = address;
    }

    boolean isEmpty() {
        return program.isEmpty();
    }

    boolean isWrong() {
        return !problems.isEmpty();
    }

    List<Problem> problems() {
        return List.copyOf(problems);
    }

    Image image() {
        functions.sort((a, b) -> Integer.compare(a.address(), b.address()));
        return new Image(file, program, eeprom, functions, memoryEnd);
    }

    private boolean isWithin(int line, long address, int length, int size, String what) {
        if (address >= 0 && address + length <= size) {
            return true;
        }
        // one message for all of them: whoever names the wrong chip has thousands
        if (outside.add(what)) {
            wrong(
                    line,
                    "OUT_OF_RANGE",
                    String.format(
                            Locale.ROOT, "bytes at 0x%X to 0x%X, and perhaps more", address, address + length - 1),
                    String.format(Locale.ROOT, "at most 0x%X, the end of %s of the %s", size - 1, what, chip.word()),
                    "name the chip that the program was built for");
        }
        return false;
    }

    private void add(List<Image.Stretch> stretches, int line, int address, Bytes bytes) {
        for (Image.Stretch other : stretches) {
            if (address < other.address() + other.bytes().length() && other.address() < address + bytes.length()) {
                wrong(
                        line,
                        "DUPLICATE",
                        String.format(Locale.ROOT, "bytes at 0x%X, which stand there already", address),
                        "every byte once",
                        "build the file anew");
                return;
            }
        }
        int last = stretches.size() - 1;
        if (last >= 0 && stretches.get(last).end() == address) {
            ByteArrayOutputStream joined = new ByteArrayOutputStream();
            joined.writeBytes(stretches.get(last).bytes().toArray());
            joined.writeBytes(bytes.toArray());
            stretches.set(last, new Image.Stretch(stretches.get(last).address(), copy(joined.toByteArray())));
        } else {
            stretches.add(new Image.Stretch(address, bytes));
        }
    }

    private static Bytes copy(byte[] bytes) {
        return Bytes.copyOf(bytes, 0, bytes.length);
    }
}
