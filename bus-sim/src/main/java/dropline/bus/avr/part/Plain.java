package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import java.util.Arrays;

/** Registers that only keep what is written: the general-purpose ones, and settings that change nothing here. */
public final class Plain implements Registers {
    private final Cpu cpu;
    private final int first;
    private final int[] values;

    public Plain(Cpu cpu, int... addresses) {
        this.cpu = cpu;
        first = Arrays.stream(addresses).min().orElse(0);
        values = new int[Arrays.stream(addresses).max().orElse(0) - first + 1];
        cpu.claim(this, addresses);
    }

    public void reset() {
        Arrays.fill(values, 0);
    }

    @Override
    public int read(int address, long cycle) {
        return values[address - first];
    }

    @Override
    public void write(int address, int value, long cycle) {
        if (values[address - first] != value) {
            cpu.acted();
        }
        values[address - first] = value;
    }
}
