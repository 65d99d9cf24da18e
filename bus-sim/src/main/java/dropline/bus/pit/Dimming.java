package dropline.bus.pit;

/**
 * How a backlight zone's brightness follows its level.
 *
 * @param curve of brightness over level
 * @param bits of its dimmer: it has 2^bits - 1 steps above dark
 */
public record Dimming(Curve curve, int bits) {
    /** Eight bits in a straight line: common practice. */
    public static final Dimming PLAIN = new Dimming(Curve.LINEAR, 8);

    /** Brightness, as a share of full, for a level, as a share of full. */
    public enum Curve {
        /** The level itself. */
        LINEAR(1),
        /** Its square. */
        SQUARE(2),
        /** Its cube. */
        CUBE(3);

        private final int power;

        Curve(int power) {
            this.power = power;
        }

        /** Brightness for a level, both 0..1. */
        public double brightness(double level) {
            double product = 1;
            for (int i = 0; i < power; i++) {
                product *= level;
            }
            return product;
        }
    }

    public Dimming {
        if (bits < 1 || bits > 16) {
            throw new IllegalArgumentException("a dimmer has 1..16 bits: bits=" + bits);
        }
    }

    /** Steps above dark. */
    public int steps() {
        return (1 << bits) - 1;
    }

    /**
     * The largest step among those that are not from dark: the brighter over the one before it. What the eye tells
     * apart is such a ratio, not a difference (Weber's law).
     *
     * @param levels steps of the level above dark
     */
    public double coarsestStep(long levels) {
        long before = 0;
        double coarsest = 1;
        for (long level = 1; level <= levels; level++) {
            long output = Math.round(curve.brightness((double) level / levels) * steps());
            if (before > 0) {
                coarsest = Math.max(coarsest, (double) output / before);
            }
            before = output;
        }
        return coarsest;
    }
}
