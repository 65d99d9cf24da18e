package dropline.bus.avr.board;

import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.core.StoppedException;
import dropline.bus.avr.part.Line;
import dropline.bus.avr.part.Usart;
import dropline.bus.clock.UartClock;
import dropline.bus.wire.EdgeReceiver;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import org.jspecify.annotations.Nullable;

/**
 * A board that runs its program at a pair. Its receiver's output rests at one while its driver is on, as where both are
 * turned by one pin. A program that stops leaves a board that does nothing more.
 */
public final class Board {
    private final Microcontroller chip;
    private final long hz;
    private final Usart usart;
    private final Line line;
    private final Driver driver;
    private final CharacterFormat format;
    private final EdgeReceiver.Characters heard;
    private EdgeReceiver listener;
    private double bitNanos;
    private final Samples samples;
    private long reachedNanos;
    private @Nullable StoppedException stop;

    /**
     * @param chip with its program; power comes now
     * @param usart its number, the one that leads to the pair
     * @param driverEnable the pin that turns the driver on, high; null where the transceiver does it by itself
     * @param bitNanos how long a bit is for whoever listens to it
     * @param heard takes what it sends
     */
    public Board(
            Microcontroller chip,
            int usart,
            @Nullable Pin driverEnable,
            double bitNanos,
            CharacterFormat format,
            EdgeReceiver.Characters heard) {
        this.chip = chip;
        hz = chip.hz();
        this.usart = chip.usart(usart);
        line = this.usart.line();
        this.format = format;
        this.heard = heard;
        this.bitNanos = bitNanos;
        listener = new EdgeReceiver(bitNanos, format, heard);
        driver = new Driver(driverEnable == null, (cycle, level) -> listener.edge(nanos(cycle), level));
        this.usart.tell(driver::begins);
        if (driverEnable != null) {
            chip.port(driverEnable.port()).watch((levels, changed, cycle) -> {
                if ((changed >> driverEnable.bit() & 1) != 0) {
                    driver.enable((levels >> driverEnable.bit() & 1) != 0, cycle);
                    line.gate(cycle);
                    this.usart.lineChanged();
                }
            });
        }
        samples = new Samples(chip.cpu(), chip.flash().size());
        chip.reset(Microcontroller.POWER_ON);
    }

    private long nanos(long cycle) {
        return UartClock.ticksToNanos(cycle, hz);
    }

    /**
     * Somebody else sends characters, one right after the other.
     *
     * @param startNanos of the first start bit; not before what was reached
     */
    public void hear(Bytes bytes, long startNanos) {
        double bitCycles = bitNanos * hz / 1e9;
        double start = startNanos * (hz / 1e9);
        int position = 0;
        for (int i = 0; i < bytes.length(); i++) {
            int before = 1;
            for (int bit = 0; bit < format.bits(); bit++) {
                int now = format.bit(bytes.at(i), bit);
                if (now != before) {
                    line.edge(start + (position + bit) * bitCycles);
                    before = now;
                }
            }
            position += format.bits();
        }
        usart.lineChanged();
    }

    /** Whoever is at the other end of the pair speaks and hears with bits of another length from now on, ns. */
    public void tune(double newBitNanos) {
        bitNanos = newBitNanos;
        listener = new EdgeReceiver(newBitNanos, format, heard);
    }

    /** The soonest instant at which it may have said a whole character, ns; later than what is reached. */
    public long nextNanos() {
        long soonest = reachedNanos + (long) ((format.bits() - 1.5) * bitNanos);
        return Math.max(reachedNanos + 1, Math.min(soonest, listener.nextNanos()));
    }

    /** Lets the program run up to an instant. */
    public void advanceTo(long nanos) {
        long until = UartClock.nanosToTicks(nanos, hz);
        try {
            if (stop == null) {
                chip.cpu().run(until);
            }
        } catch (StoppedException stopped) {
            stop = stopped;
        }
        driver.reach(until);
        listener.reach(nanos);
        reachedNanos = Math.max(reachedNanos, nanos);
    }

    /** What its clock says, ns since power came. */
    public long reachedNanos() {
        return reachedNanos;
    }

    /** Its reset pin is pulled. */
    public void restart() {
        if (stop == null) {
            chip.reset(Microcontroller.EXTERNAL);
        }
    }

    /** Its chip. */
    public Microcontroller chip() {
        return chip;
    }

    /** Its driver. */
    public Driver driver() {
        return driver;
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
