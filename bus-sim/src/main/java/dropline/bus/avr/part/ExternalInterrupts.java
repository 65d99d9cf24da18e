package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import dropline.bus.avr.core.Served;

/** INT0 and its kin: at a low level, or at edges (DS40002061, "External Interrupts"). */
public final class ExternalInterrupts implements Registers, Served {
    private static final int EIFR = 0x3C;
    private static final int EIMSK = 0x3D;
    private static final int EICRA = 0x69;
    private static final int EICRB = 0x6A;

    private static final int LOW = 0;
    private static final int FALLING = 2;
    private static final int RISING = 3;

    private final Cpu cpu;
    private final int firstVector;
    private int present;
    private int levels = 0xFF;
    private int kinds;
    private int enabled;
    private int flags;

    /**
     * @param firstVector of INT0
     * @param isLarge whether there is EICRB, for INT4 to INT7
     */
    public ExternalInterrupts(Cpu cpu, int firstVector, boolean isLarge) {
        this.cpu = cpu;
        this.firstVector = firstVector;
        cpu.claim(this, EIFR, EIMSK, EICRA);
        if (isLarge) {
            cpu.claim(this, EICRB);
        }
    }

    /** A pin is the one of INTn. */
    public void connect(int number, Port port, int bit) {
        present |= 1 << number;
        cpu.own(firstVector + number, this);
        port.watch((now, changed, cycle) -> {
            if ((changed >> bit & 1) != 0) {
                changed(number, now >> bit & 1);
            }
        });
        levels = levels & ~(1 << number) | port.level(bit) << number;
    }

    private int kind(int number) {
        return kinds >> 2 * number & 3;
    }

    private void changed(int number, int level) {
        levels = levels & ~(1 << number) | level << number;
        int kind = kind(number);
        boolean isEdge = kind != LOW && (kind == FALLING ? level == 0 : kind != RISING || level == 1);
        if (isEdge) {
            flags |= 1 << number;
        }
        ask();
    }

    public void reset() {
        kinds = 0;
        enabled = 0;
        flags = 0;
    }

    private void ask() {
        for (int number = 0; number < 8; number++) {
            int bit = 1 << number;
            if ((present & bit) != 0) {
                boolean isWanted = kind(number) == LOW ? (levels & bit) == 0 : (flags & bit) != 0;
                cpu.request(firstVector + number, isWanted && (enabled & bit) != 0);
            }
        }
    }

    @Override
    public void served(int vector) {
        flags &= ~(1 << vector - firstVector);
        ask();
    }

    @Override
    public int read(int address, long cycle) {
        return switch (address) {
            case EIFR -> flags;
            case EIMSK -> enabled;
            case EICRA -> kinds & 0xFF;
            default -> kinds >> 8;
        };
    }

    @Override
    public void write(int address, int value, long cycle) {
        cpu.acted();
        switch (address) {
            case EIFR -> flags &= ~value;
            case EIMSK -> enabled = value & present;
            case EICRA -> kinds = kinds & 0xFF00 | value;
            default -> kinds = kinds & 0xFF | value << 8;
        }
        ask();
    }

    @Override
    public boolean isByOnes(int address) {
        return address == EIFR;
    }
}
