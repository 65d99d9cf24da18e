package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import dropline.bus.avr.core.Served;
import dropline.bus.avr.core.Watchdog;

/** The watchdog, with an oscillator of 128 kHz of its own, taken as exact (DS40002061, "Watchdog Timer"). */
public final class WatchdogTimer implements Registers, Served, Watchdog {
    private static final int WDTCSR = 0x60;
    private static final int WDIF = 0x80;
    private static final int WDIE = 0x40;
    private static final int WDCE = 0x10;
    private static final int WDE = 0x08;
    private static final int OSCILLATOR_HZ = 128_000;
    private static final int SHORTEST_TICKS = 2048;

    /** How long after WDCE a change counts. */
    private static final int CHANGE_CYCLES = 4;

    private final Cpu cpu;
    private final long hz;
    private final int vector;
    private final int alarm;
    private final Runnable bites;
    private int control;
    private boolean isForced;
    private long restarted;
    private long changeUntil = -1;

    /** @param bites it was not restarted in time, and resets the chip */
    public WatchdogTimer(Cpu cpu, long hz, int vector, Runnable bites) {
        this.cpu = cpu;
        this.hz = hz;
        this.vector = vector;
        this.bites = bites;
        alarm = cpu.add(this::happen);
        cpu.claim(this, WDTCSR);
        cpu.own(vector, this);
        cpu.watchdog(this);
    }

    /** @param forced whether it goes on, as after a reset of its own making or by its fuse */
    public void reset(boolean forced) {
        isForced = forced;
        control = forced ? WDE : 0;
        restarted = cpu.cycles();
        settle();
    }

    /** MCUSR no longer says that it made the reset. */
    void release() {
        isForced = false;
    }

    private long periodCycles() {
        int setting = control & 7 | control >> 2 & 8;
        long ticks = (long) SHORTEST_TICKS << Math.min(setting, 9);
        return ticks * hz / OSCILLATOR_HZ;
    }

    private boolean isRunning() {
        return (control & (WDE | WDIE)) != 0 || isForced;
    }

    private void settle() {
        cpu.request(vector, (control & WDIF) != 0 && (control & WDIE) != 0);
        cpu.due(alarm, isRunning() ? restarted + periodCycles() : Long.MAX_VALUE);
    }

    private void happen(long cycle) {
        if (cycle < restarted + periodCycles()) {
            settle();
            return;
        }
        restarted = cycle;
        if ((control & WDIE) != 0) {
            control |= WDIF;
            settle();
        } else {
            bites.run();
        }
    }

    @Override
    public void restart(long cycle) {
        restarted = cycle;
    }

    @Override
    public void passedOver(long sinceCycle, long cycles) {
        restarted += restarted > sinceCycle ? cycles : 0;
    }

    @Override
    public void served(int ofVector) {
        control &= ~WDIF;
        if ((control & WDE) != 0) {
            control &= ~WDIE;
        }
        settle();
    }

    @Override
    public int read(int address, long cycle) {
        return control | (isForced ? WDE : 0);
    }

    @Override
    public void write(int address, int value, long cycle) {
        cpu.acted();
        boolean mayChange = cycle <= changeUntil;
        changeUntil = (value & (WDCE | WDE)) == (WDCE | WDE) ? cycle + CHANGE_CYCLES : -1;
        int free = WDIE;
        int kept = mayChange ? 0 : control & ~(free | WDCE | WDIF);
        int taken = mayChange ? value & ~(WDCE | WDIF) : value & free | value & WDE;
        int flag = control & WDIF & ~value;
        control = kept | taken | flag;
        if (mayChange) {
            restarted = cycle;
        }
        settle();
    }
}
