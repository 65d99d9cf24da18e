package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import dropline.bus.avr.core.Served;
import java.util.Arrays;

/** The EEPROM (DS40002061, "EEPROM Data Memory"); a write takes the 3.3 ms that the sheet states as typical. */
public final class Eeprom implements Registers, Served {
    private static final int EECR = 0x3F;
    private static final int EEDR = 0x40;
    private static final int EEARL = 0x41;
    private static final int EEARH = 0x42;
    private static final int EERIE = 8;
    private static final int EEMPE = 4;
    private static final int EEPE = 2;
    private static final int EERE = 1;

    /** Cycles of the calibrated oscillator at 8 MHz for a whole write. */
    private static final int WRITE_TICKS = 26_368;

    private static final int TICKS_HZ = 8_000_000;
    private static final int MASTER_CYCLES = 4;

    private final Cpu cpu;
    private final long hz;
    private final int vector;
    private final int alarm;
    private final byte[] bytes;
    private int control;
    private int data;
    private int address;
    private long masterUntil = -1;

    public Eeprom(Cpu cpu, long hz, int size, int vector) {
        this.cpu = cpu;
        this.hz = hz;
        this.vector = vector;
        alarm = cpu.add(this::written);
        bytes = new byte[size];
        Arrays.fill(bytes, (byte) 0xFF);
        cpu.claim(this, EECR, EEDR, EEARL, EEARH);
        cpu.own(vector, this);
    }

    /** Sets a byte, as a programmer does. */
    public void set(int at, int value) {
        bytes[at] = (byte) value;
    }

    /** How many bytes. */
    public int size() {
        return bytes.length;
    }

    public void reset() {
        control = 0;
        masterUntil = -1;
        ask();
    }

    private void written(long cycle) {
        control &= ~EEPE;
        ask();
    }

    private void ask() {
        cpu.request(vector, (control & EERIE) != 0 && (control & EEPE) == 0);
    }

    @Override
    public void served(int ofVector) {
        // wanted as long as it is ready
    }

    @Override
    public int read(int at, long cycle) {
        return switch (at) {
            case EECR -> control | (cycle <= masterUntil ? EEMPE : 0);
            case EEDR -> data;
            case EEARL -> address & 0xFF;
            default -> address >> 8;
        };
    }

    @Override
    public void write(int at, int value, long cycle) {
        cpu.acted();
        switch (at) {
            case EECR -> control(value, cycle);
            case EEDR -> data = value;
            case EEARL -> address = address & 0xFF00 | value;
            default -> address = address & 0xFF | value << 8;
        }
    }

    private void control(int value, long cycle) {
        boolean isWriting = (control & EEPE) != 0;
        control = control & EEPE | value & (0x30 | EERIE);
        if ((value & EEPE) != 0 && cycle <= masterUntil && !isWriting) {
            program(value >> 4 & 3, cycle);
        } else if ((value & EEMPE) != 0) {
            masterUntil = cycle + MASTER_CYCLES;
        }
        if ((value & EERE) != 0 && !isWriting) {
            data = bytes[address % bytes.length] & 0xFF;
            cpu.halt(4);
        }
        ask();
    }

    private void program(int mode, long cycle) {
        int at = address % bytes.length;
        int erased = mode == 2 ? bytes[at] : 0xFF;
        bytes[at] = (byte) (mode == 1 ? 0xFF : erased & data);
        control |= EEPE;
        masterUntil = -1;
        long ticks = mode == 0 ? WRITE_TICKS : WRITE_TICKS / 2;
        cpu.due(alarm, cycle + ticks * hz / TICKS_HZ);
        cpu.halt(2);
    }
}
