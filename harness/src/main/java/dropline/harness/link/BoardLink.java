package dropline.harness.link;

import dropline.bus.avr.board.Counterpart;
import dropline.bus.avr.chip.Microcontroller;
import dropline.bus.avr.chip.Pin;
import dropline.bus.clock.UartClock;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.util.ArrayDeque;
import org.jspecify.annotations.Nullable;

/**
 * A way to a board that is emulated: its program runs instruction by instruction in simulated time, nothing is waited
 * for, and every instant is exact.
 */
public final class BoardLink implements Link {
    private final Counterpart counterpart;
    private final CharacterFormat format;
    private final int baud;
    private final ArrayDeque<Arrival> arrived = new ArrayDeque<>();
    private double bitNanos;

    /**
     * @param chip with its program; power comes now
     * @param usart the number of the one that leads to the pair
     * @param driverEnable the pin that turns the driver on; null where the transceiver does it by itself
     * @param baud bits a second of the pair
     */
    public BoardLink(Microcontroller chip, int usart, @Nullable Pin driverEnable, int baud, CharacterFormat format) {
        this.format = format;
        this.baud = baud;
        bitNanos = UartClock.exact(baud).bitNanos();
        counterpart = new Counterpart(chip, usart, driverEnable, bitNanos, format, this::heard);
    }

    private void heard(int value, boolean good, long endNanos) {
        long seen = endNanos - Math.round(bitNanos * (format.stopBits() - 0.5));
        arrived.add(new Arrival.Received(seen, Bytes.of(value)));
    }

    /** Who is alone with the board. */
    public Counterpart counterpart() {
        return counterpart;
    }

    @Override
    public long now() {
        return counterpart.board().reachedNanos();
    }

    @Override
    public long send(byte[] bytes, int offset, int length) {
        long start = counterpart.board().reachedNanos();
        counterpart.say(Bytes.copyOf(bytes, offset, length), start);
        return start;
    }

    @Override
    public @Nullable Arrival await(long deadlineNanos) throws IOException {
        while (arrived.isEmpty() && counterpart.board().reachedNanos() < deadlineNanos) {
            counterpart.advanceTo(Math.min(deadlineNanos, counterpart.nextNanos()));
        }
        return arrived.poll();
    }

    @Override
    public boolean restart() {
        counterpart.board().restart(now());
        return true;
    }

    @Override
    public boolean tune(int wanted) {
        bitNanos = UartClock.exact(wanted).bitNanos();
        counterpart.tune(bitNanos);
        return true;
    }

    @Override
    public boolean isExact() {
        return true;
    }

    @Override
    public boolean isOnAWire() {
        return true;
    }

    @Override
    public String where() {
        return "an emulated " + counterpart.board().chip().chip().word() + " at " + baud + " baud";
    }

    @Override
    public void close() {
        arrived.clear();
    }
}
