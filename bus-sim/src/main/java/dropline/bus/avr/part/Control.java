package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import dropline.bus.avr.core.Sleep;

/** Sleep, reset causes, and the little that stands beside them: SMCR, MCUSR, MCUCR (DS40002061). */
public final class Control implements Registers, Sleep {
    private static final int SMCR = 0x53;
    private static final int MCUSR = 0x54;
    private static final int MCUCR = 0x55;
    private static final int SE = 1;
    private static final int WATCHDOG = 8;

    private final Cpu cpu;
    private final WatchdogTimer watchdog;
    private int sleep;
    private int causes;
    private int other;

    public Control(Cpu cpu, WatchdogTimer watchdog) {
        this.cpu = cpu;
        this.watchdog = watchdog;
        cpu.claim(this, SMCR, MCUSR, MCUCR);
        cpu.sleep(this);
    }

    /** @param cause a bit of MCUSR */
    public void reset(int cause) {
        sleep = 0;
        other = 0;
        causes |= cause;
    }

    @Override
    public boolean begins(long cycle) {
        if ((sleep & SE) == 0) {
            return false;
        }
        int mode = sleep >> 1 & 7;
        if (mode > 1) {
            throw cpu.stop(
                    "a sleep deeper than idle or ADC noise reduction (SM in SMCR: " + mode + ") is not modelled");
        }
        return true;
    }

    @Override
    public int read(int address, long cycle) {
        return address == SMCR ? sleep : address == MCUSR ? causes : other;
    }

    @Override
    public void write(int address, int value, long cycle) {
        if (address == SMCR) {
            if (sleep != value) {
                cpu.acted();
            }
            sleep = value;
        } else if (address == MCUSR) {
            cpu.acted();
            causes &= value;
            if ((causes & WATCHDOG) == 0) {
                watchdog.release();
            }
        } else {
            cpu.acted();
            if ((value & 2) != 0) {
                throw cpu.stop("interrupt vectors in the boot section (IVSEL in MCUCR) are not modelled");
            }
            other = value & ~1;
        }
    }
}
