package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Registers that only keep what is written: the general-purpose ones, and settings that change nothing here. */
public final class Plain implements Registers {
    private final Cpu cpu;
    private final int first;
    private final int[] values;
    private @Nullable Written written;

    /** Who wants to know what is written. */
    @FunctionalInterface
    public interface Written {
        void written(int address, int value, long cycle);
    }

    public Plain(Cpu cpu, int... addresses) {
        this.cpu = cpu;
        first = Arrays.stream(addresses).min().orElse(0);
        values = new int[Arrays.stream(addresses).max().orElse(0) - first + 1];
        cpu.claim(this, addresses);
    }

    /** Tells of all that is written from now on, the same as before or not. */
    public void watch(Written watcher) {
        written = watcher;
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
        if (written != null) {
            cpu.acted();
            written.written(address, value, cycle);
        }
    }
}
