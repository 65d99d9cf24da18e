package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import java.util.ArrayList;
import java.util.List;

/** Eight pins: PINx, DDRx, PORTx (DS40002061, "I/O-Ports"). */
public final class Port implements Registers {
    private final Cpu cpu;
    private final int base;
    private final List<Watcher> watchers = new ArrayList<>();
    private int outputs;
    private int port;
    private int held;
    private int outside;
    private int taken;
    private int takenLevels;
    private int levels;
    private int levelsBefore;
    private long changedAt;

    /** Who wants to know when pins change. */
    @FunctionalInterface
    public interface Watcher {
        /**
         * Some have.
         *
         * @param levels of all eight
         * @param changed a bit for each that is another now
         */
        void changed(int levels, int changed, long cycle);
    }

    /** @param base address of PINx; DDRx and PORTx follow */
    public Port(Cpu cpu, int base) {
        this.cpu = cpu;
        this.base = base;
        cpu.claim(this, base, base + 1, base + 2);
    }

    public void watch(Watcher watcher) {
        watchers.add(watcher);
    }

    /** The level of a pin. */
    public int level(int bit) {
        return levels >> bit & 1;
    }

    /** Something outside holds a pin at a level. */
    public void hold(int bit, int level, long cycle) {
        held |= 1 << bit;
        outside = outside & ~(1 << bit) | level << bit;
        settle(cycle);
    }

    /** A peripheral takes a pin over and drives it. */
    void take(int bit, int level, long cycle) {
        taken |= 1 << bit;
        takenLevels = takenLevels & ~(1 << bit) | level << bit;
        settle(cycle);
    }

    /** A peripheral gives a pin its level where the program has made it an output. */
    void takeOutput(int bit, int level, long cycle) {
        if ((outputs >> bit & 1) != 0) {
            take(bit, level, cycle);
        }
    }

    /** It gives the pin back. */
    void giveBack(int bit, long cycle) {
        taken &= ~(1 << bit);
        settle(cycle);
    }

    /** As after a reset: all pins are inputs without pull-ups. */
    public void reset(long cycle) {
        outputs = 0;
        port = 0;
        taken = 0;
        settle(cycle);
    }

    @Override
    public int read(int address, long cycle) {
        if (address == base) {
            // through the synchronizer: what was written by the instruction before is not there yet
            return cycle - 1 < changedAt ? levelsBefore : levels;
        }
        return address == base + 1 ? outputs : port;
    }

    @Override
    public void write(int address, int value, long cycle) {
        cpu.acted();
        if (address == base) {
            port ^= value;
        } else if (address == base + 1) {
            outputs = value;
        } else {
            port = value;
        }
        settle(cycle);
    }

    @Override
    public boolean isByOnes(int address) {
        return address == base;
    }

    private void settle(long cycle) {
        int driven = outputs & port;
        int inputs = ~outputs & (held & outside | ~held & port);
        int now = ((driven | inputs) & ~taken | taken & takenLevels) & 0xFF;
        int changed = now ^ levels;
        if (changed != 0) {
            levelsBefore = cycle - 1 < changedAt ? levelsBefore : levels;
            levels = now;
            changedAt = cycle;
            for (Watcher watcher : watchers) {
                watcher.changed(levels, changed, cycle);
            }
        }
    }
}
