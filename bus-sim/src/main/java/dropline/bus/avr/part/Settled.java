package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;

/**
 * A register that may be set to what it is after a reset, or to its top bit alone, which changes nothing; not
 * otherwise.
 */
public final class Settled implements Registers {
    private static final int TOP = 0x80;

    private final Cpu cpu;
    private final String name;

    public Settled(Cpu cpu, int address, String name) {
        this.cpu = cpu;
        this.name = name;
        cpu.claim(this, address);
    }

    @Override
    public int read(int address, long cycle) {
        return 0;
    }

    @Override
    public void write(int address, int value, long cycle) {
        if ((value & ~TOP) != 0) {
            throw cpu.stop("sets " + name + " to 0x" + Integer.toHexString(value) + ", which is not modelled");
        }
    }
}
