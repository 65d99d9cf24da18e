package dropline.bus.copper;

/**
 * What a reading may be: in ohm or volts, from what transceivers that load as much as they may make of it to what those
 * make that hardly load at all, and beyond that by what resistors and a meter are off.
 *
 * @param low least
 * @param high most
 */
public record Range(double low, double high) {
    public Range {
        if (!(low <= high)) {
            throw new IllegalArgumentException("a range must not end before it begins: low=" + low + " high=" + high);
        }
    }

    /** How far a figure is from the middle: 0 in it, 1 at either end. */
    double distance(double figure) {
        double half = (high - low) / 2;
        return Math.abs(figure - (low + half)) / half;
    }

    /** Whether no figure is in both. */
    public boolean isApartFrom(Range other) {
        return high < other.low || other.high < low;
    }

    Range turned() {
        return new Range(-high, -low);
    }

    /** From the lower end of both to the higher one. */
    public Range and(Range other) {
        return and(other.low).and(other.high);
    }

    Range and(double figure) {
        return new Range(Math.min(low, figure), Math.max(high, figure));
    }

    /** Wider by a share of itself, and by so much. */
    Range wider(double share, double by) {
        return new Range(low - Math.abs(low) * share - by, high + Math.abs(high) * share + by);
    }
}
