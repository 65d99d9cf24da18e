package dropline.bus.pit;

/**
 * One named simulator variable. A value travels and is compared in whole units of the resolution; a heading wraps.
 *
 * @param name unique in the pit
 * @param unit as written, for people: {@code deg}, {@code kt}, {@code on/off}
 * @param min least value, in the unit
 * @param max greatest value, in the unit; for a signal that wraps, the value at which it is {@code min} again
 * @param resolution smallest difference that counts as a change, in the unit, above 0
 * @param wraps whether {@code max} and {@code min} are the same place
 * @param column the recording's column
 * @param scale value = column x scale + offset
 * @param offset see scale
 * @param number number on the wire, 0..65535
 */
public record Signal(
        String name,
        String unit,
        double min,
        double max,
        double resolution,
        boolean wraps,
        String column,
        double scale,
        double offset,
        int number) {

    public Signal {
        if (!(max > min)) {
            throw new IllegalArgumentException("max must be above min: min=" + min + " max=" + max);
        }
        if (!(resolution > 0) || resolution > max - min) {
            throw new IllegalArgumentException(
                    "resolution must be above 0 and at most the range: resolution=" + resolution);
        }
    }

    /** Resolution steps from min to max. */
    public long steps() {
        return Math.round((max - min) / resolution);
    }

    /** The recorded value in whole units of the resolution; held inside the range, or taken round it if it wraps. */
    public long quantise(double recorded) {
        double value = recorded * scale + offset;
        long steps = Math.round(value / resolution);
        long low = Math.round(min / resolution);
        long high = Math.round(max / resolution);
        return wraps ? low + Math.floorMod(steps - low, high - low) : Math.max(low, Math.min(high, steps));
    }

    /** The difference {@code a - b} in units of the resolution; the short way round if the signal wraps. */
    public long difference(long a, long b) {
        long plain = a - b;
        if (!wraps) {
            return plain;
        }
        long turn = steps();
        long round = Math.floorMod(plain, turn);
        return round > turn / 2 ? round - turn : round;
    }

    /** The least value, in units of the resolution. */
    public long lowest() {
        return Math.round(min / resolution);
    }

    /** The greatest value, in units of the resolution; of a signal that wraps, the one before it is the least again. */
    public long highest() {
        return Math.round(max / resolution) - (wraps ? 1 : 0);
    }

    /** Bytes a value needs on the wire: 1, 2 or 4. */
    public int valueBytes() {
        long low = Math.round(min / resolution);
        long high = Math.round(max / resolution);
        if (low >= 0 ? high <= 0xFF : low >= -0x80 && high <= 0x7F) {
            return 1;
        }
        return (low >= 0 ? high <= 0xFFFF : low >= -0x8000 && high <= 0x7FFF) ? 2 : 4;
    }
}
