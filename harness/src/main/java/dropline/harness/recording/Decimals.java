package dropline.harness.recording;

/**
 * Doubles as whole numbers of a power of ten. A double {@code v} fits {@code d} decimals if some whole {@code m} of at
 * most 2^53 gives exactly {@code v} as {@code m / 10^d}; both are then exact doubles, and IEEE 754 division rounds
 * correctly, so the way there and back loses nothing but the sign of a zero.
 */
final class Decimals {
    /** Most decimals used. */
    static final int MOST = 15;

    private static final double EXACT = 0x1p53;
    private static final double[] POWERS = {
        1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
    };

    private Decimals() {}

    static double power(int decimals) {
        return POWERS[decimals];
    }

    /** Whether the value is a whole number of 10^-decimals. Never true of NaN and infinities. */
    static boolean fits(double value, int decimals) {
        double scaled = Math.rint(value * POWERS[decimals]);
        return Math.abs(scaled) <= EXACT && scaled / POWERS[decimals] == value;
    }

    /** The fewest decimals that the value fits, from {@code least}; {@code MOST + 1} if none do. */
    static int needed(double value, int least) {
        int decimals = least;
        while (decimals <= MOST && !fits(value, decimals)) {
            decimals++;
        }
        return decimals;
    }

    /** The whole number of a value that fits. */
    static long scaled(double value, int decimals) {
        return (long) Math.rint(value * POWERS[decimals]);
    }

    /** The value rounded to so many decimals, half to even; unchanged where it is too large to have any. */
    static double rounded(double value, int decimals) {
        double scaled = Math.rint(value * POWERS[decimals]);
        return Math.abs(scaled) <= EXACT ? scaled / POWERS[decimals] : value;
    }

    /** Appends the value in plain digits with as few decimals as it needs, a point as decimal mark. */
    static void append(StringBuilder out, double value) {
        int decimals = needed(value, 0);
        if (decimals > MOST) {
            out.append(value);
        } else {
            appendScaled(out, scaled(value, decimals), decimals);
        }
    }

    /** Appends {@code scaled / 10^decimals} with exactly so many decimals. */
    static void appendScaled(StringBuilder out, long scaled, int decimals) {
        if (scaled < 0) {
            out.append('-');
        }
        String digits = Long.toUnsignedString(Math.abs(scaled));
        for (int i = digits.length(); i <= decimals; i++) {
            out.append('0');
        }
        out.append(digits);
        if (decimals > 0) {
            out.insert(out.length() - decimals, '.');
        }
    }

    /** Appends nanoseconds as seconds, exactly, with as few decimals as it takes. */
    static void appendSeconds(StringBuilder out, long nanos) {
        int decimals = 9;
        long scaled = nanos;
        while (decimals > 0 && scaled % 10 == 0) {
            scaled /= 10;
            decimals--;
        }
        appendScaled(out, scaled, decimals);
    }
}
