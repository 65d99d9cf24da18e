package dropline.bus.indicator;

import dropline.bus.pit.Indicator;
import dropline.bus.pit.Signal;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;

/**
 * A filament on its way to a brightness, or a flag on its way over. It shows a value only once it has got there; one
 * that is replaced on the way was never shown. Turned back on the way it has only as far to go as it had come. The way
 * is a straight line in time: a filament's real one is curved, quick at first and slow towards its end, so a value
 * replaced late in the way was nearer to being shown than this says.
 */
final class Fade implements Mechanism {
    private final int slot;
    private final double upPerNano;
    private final double downPerNano;
    private final boolean darkens;
    private final long dark;

    private long startNanos;
    private long endNanos;
    private double from;
    private double to;
    private int serial;

    /** Dark, or turned to the signal's least value. */
    Fade(int slot, Indicator indicator, Signal signal, long rest) {
        this.slot = slot;
        darkens = indicator.kind() == Indicator.Kind.FILAMENT_LAMP;
        upPerNano = darkens ? signal.steps() / (double) indicator.glow().riseNanos() : 1.0 / indicator.delayNanos();
        downPerNano = darkens ? signal.steps() / (double) indicator.glow().fallNanos() : upPerNano;
        dark = rest;
        from = rest;
        to = rest;
    }

    @Override
    public void command(long atNanos, int newSerial, long value, EventOrder events) {
        goTo(atNanos, value);
        serial = newSerial;
        if (endNanos == atNanos) {
            step(events);
        }
    }

    private void goTo(long atNanos, long value) {
        double stands = level(atNanos);
        from = stands;
        to = value;
        startNanos = atNanos;
        endNanos = atNanos + (long) Math.ceil(Math.abs(to - from) / (to > from ? upPerNano : downPerNano));
    }

    private double level(long atNanos) {
        return atNanos >= endNanos
                ? to
                : from + (to - from) * ((double) (atNanos - startNanos) / (endNanos - startNanos));
    }

    @Override
    public long nextNanos() {
        return serial == 0 ? NEVER : endNanos;
    }

    @Override
    public void step(EventOrder events) {
        events.post(endNanos, Rank.SHOWN, slot, serial, 0, 0);
        serial = 0;
    }

    /** A filament goes dark with its output; a flag stops where it is. */
    @Override
    public void forget(long nowNanos, long readyNanos, EventOrder events) {
        serial = 0;
        if (darkens) {
            goTo(nowNanos, dark);
        } else {
            to = level(nowNanos);
            endNanos = nowNanos;
        }
    }
}
