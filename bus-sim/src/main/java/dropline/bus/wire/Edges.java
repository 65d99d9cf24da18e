package dropline.bus.wire;

/**
 * The edges on a pair as one receiver sees them, stretch after stretch: of everything that is on it then, drivers that
 * disagree and noise included.
 */
public final class Edges {
    /** A level is asked for a little after the instant at which it may turn, which rounding may put before the turn. */
    private static final double AFTER_NANOS = 0.05;

    private final Wire wire;
    private final Noise noise;
    private final Waveform wave;

    /** Takes the edges. */
    @FunctionalInterface
    public interface Sink {
        /** The level turns, ns. */
        void turns(double nanos);
    }

    /** @param nominalBitNanos how long a bit is at the segment's baud rate, ns */
    public Edges(Wire wire, Wire.Content content, Noise noise, double nominalBitNanos) {
        this.wire = wire;
        this.noise = noise;
        wave = new Waveform(content, noise, nominalBitNanos);
    }

    /** Looks at what is on the pair from an instant to another one. */
    public void lookAt(long fromNanos, long toNanos) {
        wire.collect(fromNanos, toNanos, wave);
    }

    /**
     * Tells of the edges in a stretch that was looked at.
     *
     * @param before the level before it
     * @return the level at its end
     */
    public int tell(long fromNanos, long toNanos, Uart receiver, int before, Sink sink) {
        int level = before;
        if (wave.isEmpty() && noise.quietAfter(fromNanos)) {
            if (level == 0) {
                sink.turns(fromNanos);
            }
            return 1;
        }
        double at = fromNanos;
        while (at < toNanos) {
            int now = wave.level(at + AFTER_NANOS, receiver);
            if (now != level) {
                level = now;
                sink.turns(at);
            }
            at = wave.nextChange(at + AFTER_NANOS);
        }
        return level;
    }
}
