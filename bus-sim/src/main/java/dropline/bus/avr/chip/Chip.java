package dropline.bus.avr.chip;

import dropline.bus.avr.core.Shape;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * The chips that are modelled. Interrupt response and wake-up follow each sheet's "Interrupt Response Time": four
 * cycles and four more (DS40002061), five and five (2549, for the 1280 too, whose program counter has only 16 bits, and
 * 7766). What calls and returns take follows the program counter's width (DS40002198).
 */
public enum Chip {
    /** 32 KiB. */
    ATMEGA328P(Kind.SMALL, 0x4000, 0x100, 0x8FF, 1024, 64, 0x1E950F),
    /** 16 KiB. */
    ATMEGA168(Kind.SMALL, 0x2000, 0x100, 0x4FF, 512, 64, 0x1E9406),
    /** 256 KiB, a program counter of 17 bits. */
    ATMEGA2560(Kind.LARGE, 0x20000, 0x200, 0x21FF, 4096, 128, 0x1E9801),
    /** 128 KiB. */
    ATMEGA1280(Kind.LARGE, 0x10000, 0x200, 0x21FF, 4096, 128, 0x1E9703),
    /** 32 KiB and USB, which is not modelled. */
    ATMEGA32U4(Kind.USB, 0x4000, 0x100, 0xAFF, 1024, 64, 0x1E9587);

    /** What chips have in common. */
    enum Kind {
        SMALL,
        LARGE,
        USB
    }

    private static final int MUX5 = 32;

    final Kind kind;
    private final int eepromBytes;
    final int pageWords;
    private final int flashWords;
    private final int ramStart;
    private final int ramEnd;
    private final int signature;

    Chip(Kind kind, int flashWords, int ramStart, int ramEnd, int eepromBytes, int pageWords, int signature) {
        this.kind = kind;
        this.flashWords = flashWords;
        this.ramStart = ramStart;
        this.ramEnd = ramEnd;
        this.eepromBytes = eepromBytes;
        this.pageWords = pageWords;
        this.signature = signature;
    }

    /** The chip of a name, as {@code atmega328p}. */
    public static Optional<Chip> named(String name) {
        return Arrays.stream(values())
                .filter(chip -> chip.word().equals(name.toLowerCase(Locale.ROOT)))
                .findFirst();
    }

    /** Its name, as {@code atmega328p}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** How its processor is made. */
    public Shape shape() {
        int response = kind == Kind.SMALL ? 4 : 5;
        return new Shape(flashWords, ramStart, ramEnd, flashWords > 0x10000, 2, response, response);
    }

    /** Bytes of program. */
    public int flashBytes() {
        return 2 * flashWords;
    }

    /** First address of memory. */
    public int ramStart() {
        return ramStart;
    }

    /** Last address of memory. */
    public int ramEnd() {
        return ramEnd;
    }

    /** Its USARTs' numbers, ascending. */
    public int[] usarts() {
        return switch (kind) {
            case SMALL -> new int[] {0};
            case LARGE -> new int[] {0, 1, 2, 3};
            case USB -> new int[] {1};
        };
    }

    /** The letters of its ports, ascending. */
    public String ports() {
        return switch (kind) {
            case SMALL -> "BCD";
            case LARGE -> "ABCDEFGHJKL";
            case USB -> "BCDEF";
        };
    }

    /** The converter's channel behind a pin, as its multiplexer is set for it; -1 where there is none. */
    public int analogChannel(char port, int bit) {
        return switch (kind) {
            case SMALL -> port == 'C' && bit < 6 ? bit : -1;
            case LARGE -> port == 'F' ? bit : port == 'K' ? MUX5 + bit : -1;
            case USB -> port == 'F' && bit != 2 && bit != 3 ? bit : -1;
        };
    }

    /** Bytes of EEPROM. */
    public int eepromBytes() {
        return eepromBytes;
    }

    int signature() {
        return signature;
    }

    /** Address of a port's PINx. */
    static int portBase(char letter) {
        return letter <= 'G' ? 0x20 + 3 * (letter - 'A') : 0x100 + 3 * (letter - (letter > 'I' ? 'I' : 'H'));
    }
}
