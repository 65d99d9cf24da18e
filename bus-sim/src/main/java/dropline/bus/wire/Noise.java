package dropline.bus.wire;

import dropline.bus.chance.Draws;

/** What disturbs the pair as a whole: bursts of noise, and an idle level that nothing holds. */
public final class Noise {
    private static final int KEPT = 32;

    private final boolean described;
    private final long stream;
    private final long[] from = new long[KEPT];
    private final long[] until = new long[KEPT];
    private long bursts;
    private long lastUntil = -1;
    private boolean biasLost;

    /**
     * @param biased whether the pair rests at one while nobody drives it
     * @param stream of the bursts' draws
     */
    public Noise(boolean biased, long stream) {
        described = biased;
        this.stream = stream;
    }

    /** A burst begins; the last 32 are remembered. */
    public void burst(long fromNanos, long untilNanos) {
        int at = (int) (bursts++ % KEPT);
        from[at] = fromNanos;
        until[at] = untilNanos;
        lastUntil = Math.max(lastUntil, untilNanos);
    }

    /** The bias is lost, or found again. */
    public void loseBias(boolean lost) {
        biasLost = lost;
    }

    boolean biased() {
        return described && !biasLost;
    }

    /** Whether the pair is held and there was no burst so far. */
    boolean isAbsent() {
        return bursts == 0 && biased();
    }

    /** Whether noise may disturb anything in a stretch. */
    boolean disturbs(long fromNanos, long toNanos) {
        if (!biased()) {
            return true;
        }
        if (fromNanos >= lastUntil) {
            return false;
        }
        for (int i = 0; i < Math.min(bursts, KEPT); i++) {
            if (from[i] < toNanos && until[i] > fromNanos) {
                return true;
            }
        }
        return false;
    }

    /** The stream of the burst that covers an instant, or -1. */
    long burstAt(long nanos) {
        if (nanos >= lastUntil) {
            return -1;
        }
        for (int i = 0; i < Math.min(bursts, KEPT); i++) {
            if (nanos >= from[i] && nanos < until[i]) {
                return Draws.mix(stream + from[i]) >>> 1;
            }
        }
        return -1;
    }

    /** Whether the pair is held and no burst comes at or after an instant. */
    boolean quietAfter(long nanos) {
        return biased() && nanos >= lastUntil;
    }
}
