package dropline.bus.avr.chip;

import java.util.Locale;

/** Registers that are not modelled, or matter little, by name (each sheet's "Register Summary"). */
final class Names {
    private static final int ASSR = 0xB6;

    private Names() {}

    /** Those that only keep what is written: they change nothing that is modelled. */
    static int[] kept(Chip chip) {
        return switch (chip.kind) {
            case SMALL -> new int[] {0x64, 0x7E, 0x7F};
            case LARGE -> new int[] {0x64, 0x65, 0x7D, 0x7E, 0x7F};
            case USB -> new int[] {0x5B, 0x5C, 0x64, 0x65, 0x7D, 0x7E, 0x7F};
        };
    }

    /** Those that may be left as a reset leaves them, and nothing else. */
    static int[] settled(Chip chip) {
        return switch (chip.kind) {
            case SMALL -> new int[] {0x50, 0x61, ASSR};
            case LARGE -> new int[] {0x50, 0x61, 0x74, 0x75, ASSR};
            case USB -> new int[] {0x50, 0x61};
        };
    }

    static String of(int address) {
        return switch (address) {
            case 0x49 -> "PLLCSR";
            case 0x50 -> "ACSR";
            case 0x51 -> "OCDR";
            case 0x52 -> "PLLFRQ";
            case 0x61 -> "CLKPR";
            case 0x66 -> "OSCCAL";
            case 0x67 -> "RCCTRL";
            case 0x74 -> "XMCRA";
            case 0x75 -> "XMCRB";
            case ASSR -> "ASSR";
            default -> "";
        };
    }

    /** What stops a program that goes to an address behind which nothing is. */
    static String wrong(Chip chip, int address) {
        String hex = "0x" + Integer.toHexString(address).toUpperCase(Locale.ROOT);
        if (address > chip.ramEnd()) {
            return "goes to address " + hex + ", and memory ends with 0x"
                    + Integer.toHexString(chip.ramEnd()).toUpperCase(Locale.ROOT);
        }
        if (chip.kind == Chip.Kind.USB && (address >= 0xD7 || address == 0x49 || address == 0x52)) {
            return "uses the USB of the " + chip.word() + " (" + hex + "), which is not modelled: build the program"
                    + " without it, or examine the board on a port";
        }
        if (chip.kind == Chip.Kind.USB
                && ((address >= 0xBE && address <= 0xD4) || address == 0x39 || address == 0x72)) {
            return "uses timer 4 of the " + chip.word() + " (" + hex + "), which is not modelled";
        }
        String name = of(address);
        return name.isEmpty()
                ? "goes to address " + hex + ", where " + chip.word() + " has no register"
                : "uses " + name + " (" + hex + "), which is not modelled";
    }
}
