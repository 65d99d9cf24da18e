package dropline.bus.avr.device;

import java.util.Arrays;

/**
 * A display of up to 80 characters with its memory (Hitachi, HD44780U, ADE-207-272: "Instructions", "Interfacing to the
 * MPU", "Initializing by Instruction"), by the upper four of its data lines. It shows another text with the end of a
 * write that leaves its memory another than before. How long an instruction takes it is not modelled: its program has
 * to wait.
 */
final class CharacterLcd {
    private static final int SECOND_LINE = 0x40;
    private static final int LINE = 40;
    private static final int BLANK = ' ';

    private final Device.Seen seen;
    private final byte[] text = new byte[2 * LINE];
    private final byte[] shapes = new byte[64];
    private boolean isByFour;
    private boolean hasHigh;
    private int high;
    private int at;
    private boolean isShape;
    private int way = 1;
    private int isOn;
    private boolean isChanged;

    CharacterLcd(Device.Seen seen) {
        this.seen = seen;
        Arrays.fill(text, (byte) BLANK);
    }

    /**
     * Its enable line falls, with this on the others.
     *
     * @param isData whether its register line is high
     * @param upper what stands on the upper four data lines
     */
    void taken(boolean isData, int upper, long cycle) {
        if (isByFour && !hasHigh) {
            high = upper;
            hasHigh = true;
            return;
        }
        int value = isByFour ? high << 4 | upper : upper << 4;
        hasHigh = false;
        if (isData) {
            put(value);
        } else {
            carryOut(value);
        }
        if (isChanged) {
            isChanged = false;
            seen.changed(0, cycle);
        }
    }

    private void carryOut(int value) {
        switch (Integer.highestOneBit(value)) {
            case 0x80 -> {
                isShape = false;
                at = place(value & 0x7F);
            }
            case 0x40 -> {
                isShape = true;
                at = value & 0x3F;
            }
            case 0x20 -> isByFour = (value & 0x10) == 0;
            case 0x10 -> isChanged |= (value & 0x08) != 0;
            case 0x08 -> {
                isChanged |= isOn != (value & 7);
                isOn = value & 7;
            }
            case 0x04 -> way = (value & 0x02) != 0 ? 1 : -1;
            case 0x02 -> at = 0;
            case 0x01 -> clear();
            default -> {}
        }
    }

    /** Where an address lies in the memory: the second line begins at 0x40. */
    private static int place(int address) {
        return address < SECOND_LINE ? Math.min(address, LINE - 1) : LINE + Math.min(address - SECOND_LINE, LINE - 1);
    }

    private void clear() {
        for (int i = 0; i < text.length; i++) {
            isChanged |= text[i] != BLANK;
            text[i] = BLANK;
        }
        isShape = false;
        at = 0;
        way = 1;
    }

    private void put(int value) {
        byte[] into = isShape ? shapes : text;
        isChanged |= into[at] != (byte) value;
        into[at] = (byte) value;
        at = Math.floorMod(at + way, into.length);
    }
}
