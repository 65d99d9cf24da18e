package dropline.bus.avr.board;

import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import dropline.bus.avr.core.StoppedException;
import dropline.bus.avr.part.Usart;
import dropline.bus.clock.UartClock;
import org.jspecify.annotations.Nullable;

/**
 * A board that runs its program, and talks through a transceiver. A program that stops leaves a board that does nothing
 * more.
 */
public final class Board {
    private final Microcontroller chip;
    private final long hz;
    private final Usart usart;
    private final long powerNanos;
    private final Samples samples;
    private long reachedNanos;
    private @Nullable StoppedException stop;

    /** Takes what it does to its pair. All instants are its chip's cycles. */
    public interface Talk {
        /** The pin that turns its driver on has changed. */
        void enabled(boolean isOn, long cycle);

        /**
         * A character begins.
         *
         * @param bits all of it as it stands on the line, start bit first, in the lowest place
         * @param length how many bits those are
         * @param startCycle of its start bit
         * @param bitCycles how long a bit is
         */
        void begins(int bits, int length, long startCycle, int bitCycles);
    }

    /**
     * @param chip with its program; power comes now
     * @param usart its number, the one that leads to the pair
     * @param driverEnable the pin that turns the driver on, high; null where the transceiver does it by itself
     * @param powerNanos when power comes, ns; before 0 for one that has been running for a while
     */
    public Board(Microcontroller chip, int usart, @Nullable Pin driverEnable, long powerNanos, Talk talk) {
        this.chip = chip;
        this.powerNanos = powerNanos;
        reachedNanos = powerNanos;
        hz = chip.hz();
        this.usart = chip.usart(usart);
        this.usart.tell(talk::begins);
        if (driverEnable != null) {
            chip.port(driverEnable.port()).watch((levels, changed, cycle) -> {
                if ((changed >> driverEnable.bit() & 1) != 0) {
                    talk.enabled((levels >> driverEnable.bit() & 1) != 0, cycle);
                }
            });
        }
        samples = new Samples(chip.cpu(), chip.flash().size());
        chip.reset(Microcontroller.POWER_ON);
    }

    /** When a cycle begins, ns. */
    public long nanos(long cycle) {
        return powerNanos + UartClock.ticksToNanos(cycle, hz);
    }

    /** The cycle at an instant. */
    public long cycle(long nanos) {
        return UartClock.nanosToTicks(nanos - powerNanos, hz);
    }

    /** What stands at its receiver's pin turns; instants ascend, until {@link #heard} is called. */
    public void edge(double nanos) {
        usart.line().edge(place(nanos));
    }

    /** The soonest instant from which on it can be told something else, ns, if it was told already. */
    public long openNanos() {
        double forgotten = usart.line().forgotten();
        return forgotten < 0 ? Long.MIN_VALUE : nanos((long) Math.ceil(forgotten));
    }

    /**
     * What was told of an instant and of those after it turns out otherwise.
     *
     * @param nanos not before {@link #openNanos}
     * @return the level before it
     */
    public int takeBack(long nanos) {
        return usart.line().takeBack(place(nanos));
    }

    private double place(double nanos) {
        return (nanos - powerNanos) * (hz / 1e9);
    }

    /** All edges that are known have been told. */
    public void heard() {
        usart.lineChanged();
    }

    /** Lets the program run up to an instant. */
    public void advanceTo(long nanos) {
        try {
            if (stop == null) {
                chip.cpu().run(cycle(nanos));
            }
        } catch (StoppedException stopped) {
            stop = stopped;
        }
        reachedNanos = Math.max(reachedNanos, nanos);
    }

    /** How far it has come, ns. */
    public long reachedNanos() {
        return reachedNanos;
    }

    /** Its reset pin is pulled, and let go at an instant. */
    public void restart(long untilNanos) {
        if (stop == null) {
            chip.reset(Microcontroller.EXTERNAL);
            chip.cpu().halt(Math.max(0, cycle(untilNanos) - chip.cpu().cycles()));
        }
    }

    /** Its chip. */
    public Microcontroller chip() {
        return chip;
    }

    /** Where its program spends its time. */
    public Samples samples() {
        return samples;
    }

    /** The USART that leads to the pair. */
    public Usart usart() {
        return usart;
    }

    /** Why its program does nothing more; null while it runs. */
    public @Nullable StoppedException stop() {
        return stop;
    }
}
