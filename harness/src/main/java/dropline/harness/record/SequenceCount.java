package dropline.harness.record;

/**
 * Follows the numbers a sender gives its messages: which are missing, come late, or come twice. It remembers the last
 * 64, as a receiver window does (RFC 4303, section 3.4.3).
 */
final class SequenceCount {
    /** What a number says about its message. */
    enum Place {
        /** Newer than all before. */
        NEWEST,
        /** It came after newer ones. */
        LATE,
        /** It was there before. */
        REPEATED
    }

    private static final int WINDOW = 64;

    /** A step further than this is no loss but a sender that began anew. */
    private static final long FURTHEST = 1L << 20;

    private final long modulus;
    private boolean begun;
    private long last;
    private long seen;
    private long missing;
    private long restarts;

    /** Counts modulo this; 0 for without end. */
    SequenceCount(long modulus) {
        this.modulus = modulus;
    }

    Place take(long number) {
        long step = begun ? step(number - last) : 1;
        if (!begun || step > FURTHEST || step <= -WINDOW) {
            restarts += begun ? 1 : 0;
            begun = true;
            last = number;
            seen = 1;
            return Place.NEWEST;
        }
        if (step > 0) {
            missing += step - 1;
            seen = step >= WINDOW ? 1 : seen << step | 1;
            last = number;
            return Place.NEWEST;
        }
        long bit = 1L << -step;
        if ((seen & bit) != 0) {
            return Place.REPEATED;
        }
        seen |= bit;
        missing -= missing > 0 ? 1 : 0;
        return Place.LATE;
    }

    private long step(long difference) {
        return modulus == 0 ? difference : Math.floorMod(difference + modulus / 2, modulus) - modulus / 2;
    }

    /** Numbers that have not come so far. */
    long missing() {
        return missing;
    }

    /** How often the numbers began anew. */
    long restarts() {
        return restarts;
    }
}
