package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import java.util.ArrayList;
import java.util.List;

/**
 * The dividers that timers share, and GTCCR, which begins them anew (DS40002061, "Timer/Counter0 and 1 Prescalers").
 */
public final class Prescaler implements Registers {
    private static final int GTCCR = 0x43;
    private static final int PSRSYNC = 1;
    private static final int PSRASY = 2;

    private final Cpu cpu;
    private final List<Counter> together = new ArrayList<>();
    private final List<Counter> alone = new ArrayList<>();

    public Prescaler(Cpu cpu) {
        this.cpu = cpu;
        cpu.claim(this, GTCCR);
    }

    void serves(Counter counter, boolean isShared) {
        (isShared ? together : alone).add(counter);
    }

    @Override
    public int read(int address, long cycle) {
        return 0;
    }

    @Override
    public void write(int address, int value, long cycle) {
        cpu.acted();
        if ((value & ~(PSRSYNC | PSRASY)) != 0) {
            throw cpu.stop("timers that are held (TSM in GTCCR) are not modelled");
        }
        if ((value & PSRSYNC) != 0) {
            together.forEach(counter -> counter.divideAnew(cycle));
        }
        if ((value & PSRASY) != 0) {
            alone.forEach(counter -> counter.divideAnew(cycle));
        }
    }
}
