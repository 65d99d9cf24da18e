package dropline.bus.avr.board;

import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import dropline.bus.avr.part.Line;
import dropline.bus.wire.EdgeReceiver;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import org.jspecify.annotations.Nullable;

/**
 * Whoever is alone with a board at a pair: says characters to it, and hears those that it sends. The board's receiver
 * rests at one while its driver is on, as where both are turned by one pin.
 */
public final class Counterpart {
    private final Board board;
    private final Driver driver;
    private final CharacterFormat format;
    private final EdgeReceiver.Characters heard;
    private EdgeReceiver listener;
    private double bitNanos;

    /**
     * @param chip the board's, with its program; power comes now
     * @param usart the number of the one that leads to the pair
     * @param driverEnable the pin that turns the driver on, high; null where the transceiver does it by itself
     * @param bitNanos how long a bit is for the counterpart
     * @param heard takes what the board sends
     */
    public Counterpart(
            Microcontroller chip,
            int usart,
            @Nullable Pin driverEnable,
            double bitNanos,
            CharacterFormat format,
            EdgeReceiver.Characters heard) {
        this.format = format;
        this.heard = heard;
        this.bitNanos = bitNanos;
        listener = new EdgeReceiver(bitNanos, format, heard);
        Line line = chip.usart(usart).line();
        driver = new Driver(driverEnable == null, this::turns, cycle -> {
            line.gate(cycle);
            chip.usart(usart).lineChanged();
        });
        board = new Board(chip, usart, driverEnable, 0, driver);
    }

    private void turns(long cycle, int level) {
        listener.edge(board.nanos(cycle), level);
    }

    /**
     * Says characters, one right after the other.
     *
     * @param startNanos of the first start bit; not before what was reached
     */
    public void say(Bytes bytes, long startNanos) {
        int position = 0;
        for (int i = 0; i < bytes.length(); i++) {
            int before = 1;
            for (int bit = 0; bit < format.bits(); bit++) {
                int now = format.bit(bytes.at(i), bit);
                if (now != before) {
                    board.edge(startNanos + (position + bit) * bitNanos);
                    before = now;
                }
            }
            position += format.bits();
        }
        board.heard();
    }

    /** It speaks and hears with bits of another length from now on, ns. */
    public void tune(double newBitNanos) {
        bitNanos = newBitNanos;
        listener = new EdgeReceiver(newBitNanos, format, heard);
    }

    /** The soonest instant at which the board may have said a whole character, ns; later than what is reached. */
    public long nextNanos() {
        long reached = board.reachedNanos();
        long soonest = reached + (long) ((format.bits() - 1.5) * bitNanos);
        return Math.max(reached + 1, Math.min(soonest, listener.nextNanos()));
    }

    /** Lets the board's program run up to an instant. */
    public void advanceTo(long nanos) {
        board.advanceTo(nanos);
        driver.reach(board.cycle(nanos));
        listener.reach(nanos);
    }

    /** The board. */
    public Board board() {
        return board;
    }

    /** The board's driver. */
    public Driver driver() {
        return driver;
    }
}
