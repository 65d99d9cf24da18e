package dropline.bus.avr.device;

import dropline.bus.avr.part.Twi;

/**
 * A character display behind a port expander, wired as on the usual little board: register line at P0, read line at P1,
 * enable line at P2, light at P3, data lines at P4 to P7. (That wiring is common practice, not a standard.) Asked
 * whether it is busy, it says no.
 */
final class LcdExpander implements Twi.Peer {
    private static final int REGISTER = 0x01;
    private static final int READS = 0x02;
    private static final int ENABLE = 0x04;
    private static final int DATA_SHIFT = 4;

    private final int address;
    private final CharacterLcd display;
    private int outputs = 0xFF;

    LcdExpander(int address, CharacterLcd display) {
        this.address = address;
        this.display = display;
    }

    @Override
    public boolean is(int asked) {
        return asked == address;
    }

    @Override
    public boolean written(int value, long cycle) {
        boolean falls = (outputs & ENABLE) != 0 && (value & ENABLE) == 0;
        outputs = value;
        if (falls && (value & READS) == 0) {
            display.taken((value & REGISTER) != 0, value >> DATA_SHIFT, cycle);
        }
        return true;
    }

    @Override
    public int read() {
        return (outputs & READS) == 0 ? outputs : outputs & (1 << DATA_SHIFT) - 1;
    }
}
