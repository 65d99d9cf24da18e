package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Flash;
import dropline.bus.avr.core.Programming;
import dropline.bus.avr.core.Registers;
import java.util.Arrays;

/** The program that writes itself: SPMCSR and SPM (DS40002061, "Boot Loader Support"). */
public final class SelfProgramming implements Programming {
    private static final int SPMCSR = 0x57;
    private static final int SPMEN = 1;
    private static final int PGERS = 2;
    private static final int PGWRT = 4;
    private static final int BLBSET = 8;
    private static final int RWWSRE = 16;
    private static final int SIGRD = 32;
    private static final int RWWSB = 64;

    /** Erasing or writing a page: 4.5 ms at most. */
    private static final double PAGE_SECONDS = 0.0045;

    private static final int IN_TIME = 4;

    private final Cpu cpu;
    private final Flash flash;
    private final int pageWords;
    private final int signature;
    private final int[] fuses;
    private final long pageCycles;
    private final int[] page;
    private final int alarm;
    private int control;
    private long controlUntil = -1;

    /**
     * @param signature three bytes, the first one highest
     * @param fuses low, lock, extended, high: as BLBSET reads them
     */
    public SelfProgramming(Cpu cpu, Flash flash, long hz, int pageWords, int signature, int[] fuses) {
        this.cpu = cpu;
        this.flash = flash;
        this.pageWords = pageWords;
        this.signature = signature;
        this.fuses = fuses.clone();
        pageCycles = Math.round(PAGE_SECONDS * hz);
        page = new int[pageWords];
        Arrays.fill(page, 0xFFFF);
        alarm = cpu.add(cycle -> control &= ~SPMEN & ~PGERS & ~PGWRT);
        cpu.claim(new Status(), SPMCSR);
        cpu.programming(this);
    }

    public void reset() {
        control = 0;
        controlUntil = -1;
    }

    @Override
    public int read(int byteAddress, long cycle) {
        boolean isSpecial = (control & SPMEN) != 0 && cycle <= controlUntil;
        if (isSpecial && (control & BLBSET) != 0) {
            return fuses[byteAddress & 3];
        }
        if (isSpecial && (control & SIGRD) != 0) {
            return (byteAddress & 1) == 0 && byteAddress < 6 ? signature >> 16 - 4 * byteAddress & 0xFF : 0xFF;
        }
        return flash.word(byteAddress >> 1) >> ((byteAddress & 1) << 3) & 0xFF;
    }

    @Override
    public void store(int address, int value, long cycle) {
        cpu.acted();
        int word = address >> 1;
        int first = word & -pageWords;
        if ((control & SPMEN) == 0 || cycle > controlUntil + 1) {
            return;
        }
        if ((control & PGERS) != 0) {
            for (int i = 0; i < pageWords; i++) {
                flash.set(first + i, 0xFFFF);
            }
            busy(cycle);
        } else if ((control & PGWRT) != 0) {
            for (int i = 0; i < pageWords; i++) {
                flash.set(first + i, flash.word(first + i) & page[i]);
            }
            Arrays.fill(page, 0xFFFF);
            busy(cycle);
        } else if ((control & RWWSRE) != 0) {
            control = 0;
        } else if ((control & BLBSET) != 0) {
            throw cpu.stop("a program that sets its lock bits is not modelled");
        } else {
            page[word & pageWords - 1] = value;
            control &= ~SPMEN;
        }
    }

    private void busy(long cycle) {
        control |= RWWSB;
        cpu.due(alarm, cycle + pageCycles);
    }

    /** SPMCSR. */
    private final class Status implements Registers {
        @Override
        public int read(int address, long cycle) {
            return control;
        }

        @Override
        public void write(int address, int value, long cycle) {
            cpu.acted();
            control = control & RWWSB | value & 0xBF;
            controlUntil = cycle + IN_TIME;
        }
    }
}
