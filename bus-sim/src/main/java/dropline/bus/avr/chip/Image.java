package dropline.bus.avr.chip;

import dropline.bus.avr.core.Flash;
import dropline.protocol.Bytes;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A program as it would be flashed.
 *
 * @param name of its file
 * @param program stretches of program memory
 * @param eeprom stretches of EEPROM
 * @param functions ascending by address; empty where the file does not say
 * @param memoryEnd the first address of memory beyond its variables; 0 where the file does not say
 */
public record Image(String name, List<Stretch> program, List<Stretch> eeprom, List<Function> functions, int memoryEnd) {
    /**
     * Bytes that lie together.
     *
     * @param address of the first
     */
    public record Stretch(int address, Bytes bytes) {
        /** The address after the last. */
        public int end() {
            return address + bytes.length();
        }
    }

    /**
     * A function.
     *
     * @param address of its first byte
     * @param size in bytes; 0 where the file does not say
     */
    public record Function(String name, int address, int size) {}

    public Image {
        program = List.copyOf(program);
        eeprom = List.copyOf(eeprom);
        functions = List.copyOf(functions);
    }

    /** Its file's name without folders. */
    public String shortName() {
        return name.substring(1 + Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')));
    }

    /** A chip with this program in it, its power just come; it begins at a byte address. */
    public Microcontroller on(Chip chip, long hz, int beginsAtByte) {
        Flash flash = new Flash(chip.shape().flashWords());
        for (Stretch stretch : program) {
            for (int i = 0; i < stretch.bytes().length(); i++) {
                int at = stretch.address() + i;
                int shift = (at & 1) * 8;
                int kept = flash.word(at >> 1) & ~(0xFF << shift);
                flash.set(at >> 1, kept | stretch.bytes().at(i) << shift);
            }
        }
        Microcontroller made = new Microcontroller(chip, hz, flash, beginsAtByte);
        for (Stretch stretch : eeprom) {
            for (int i = 0; i < stretch.bytes().length(); i++) {
                made.eeprom().set(stretch.address() + i, stretch.bytes().at(i));
            }
        }
        return made;
    }

    /** The lowest address of the program. */
    public int beginsAt() {
        return program.stream().mapToInt(Stretch::address).min().orElse(0);
    }

    /** How many bytes of program memory it takes. */
    public int size() {
        return program.stream().mapToInt(stretch -> stretch.bytes().length()).sum();
    }

    /** A place in the program in words: the function and its address, or the address alone. */
    public String place(int byteAddress) {
        String hex = String.format(Locale.ROOT, "0x%04X", byteAddress);
        List<Function> before = new ArrayList<>(functions);
        before.removeIf(function -> function.address() > byteAddress
                || (function.size() > 0 && byteAddress >= function.address() + function.size()));
        return before.isEmpty() ? hex : before.get(before.size() - 1).name() + " (" + hex + ")";
    }
}
