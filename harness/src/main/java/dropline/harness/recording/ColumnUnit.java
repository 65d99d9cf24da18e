package dropline.harness.recording;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A unit as the name of a column may carry it: {@code alt [ft]}, {@code speed (kt)}, {@code altitude_m},
 * {@code OIL_PSI}. Factors and offsets are those of NIST SP 811 (2008), appendix B.
 *
 * @param word as Dropline writes it
 * @param quantity what it measures; units of different quantities are not compared
 * @param factor value in the quantity's first unit = value x factor + offset
 * @param offset see factor
 */
public record ColumnUnit(String word, String quantity, double factor, double offset) {
    private static final Pattern BRACKETS = Pattern.compile("^(.*?)[ _]*[\\[(]([^\\[\\]()]+)[\\])]\\s*$");
    private static final Pattern LAST_WORD = Pattern.compile("^(.*[^ _.-])[ _.-]+([\\p{L}%/]+)$");
    private static final Map<String, ColumnUnit> UNITS = units();

    /**
     * A column's name taken apart.
     *
     * @param rest the name without the unit
     */
    public record InName(String rest, ColumnUnit unit) {}

    /**
     * The unit that a column's name ends in, if it is a known one. A single letter counts only in brackets, or as _m.
     */
    public static Optional<InName> of(String column) {
        Matcher matcher = BRACKETS.matcher(column);
        boolean brackets = matcher.matches();
        if (!brackets) {
            matcher = LAST_WORD.matcher(column);
            if (!matcher.matches() || (matcher.group(2).length() == 1 && !column.endsWith("_m"))) {
                return Optional.empty();
            }
        }
        String rest = matcher.group(1).strip();
        return rest.isEmpty() ? Optional.empty() : named(matcher.group(2)).map(unit -> new InName(rest, unit));
    }

    /** The unit of this name, if it is known. */
    static Optional<ColumnUnit> named(String text) {
        String word =
                text.strip().toLowerCase(Locale.ROOT).replace("\u00B0", "deg").replace(" ", "");
        return Optional.ofNullable(UNITS.get(word));
    }

    /** Whether both measure the same, in different units. */
    boolean disagreesWith(ColumnUnit other) {
        return quantity.equals(other.quantity) && (factor != other.factor || offset != other.offset);
    }

    /** What turns a value in this unit into one in the other: value x scale + offset. */
    double scaleTo(ColumnUnit other) {
        return factor / other.factor;
    }

    /** See {@link #scaleTo}. */
    double offsetTo(ColumnUnit other) {
        return (offset - other.offset) / other.factor;
    }

    private static Map<String, ColumnUnit> units() {
        Map<String, ColumnUnit> units = new LinkedHashMap<>();
        add(units, "length", 1, "m", "metres", "meters");
        add(units, "length", 0.3048, "ft", "feet", "foot");
        add(units, "length", 1000, "km");
        add(units, "length", 1852, "NM", "nmi");
        add(units, "length", 1609.344, "mi", "miles");
        add(units, "speed", 1, "m/s", "mps");
        add(units, "speed", 1852.0 / 3600, "kt", "kts", "knots");
        add(units, "speed", 1 / 3.6, "km/h", "kmh", "kph");
        add(units, "speed", 0.44704, "mph");
        add(units, "speed", 0.3048 / 60, "fpm", "ft/min");
        add(units, "angle", 1, "deg", "degrees");
        add(units, "angle", 180 / Math.PI, "rad", "radians");
        add(units, "pressure", 1, "Pa");
        add(units, "pressure", 100, "hPa", "mbar", "mb");
        add(units, "pressure", 1000, "kPa");
        add(units, "pressure", 100_000, "bar");
        add(units, "pressure", 6894.757, "psi");
        add(units, "pressure", 3386.389, "inHg");
        add(units, "temperature", 1, "degC", "celsius", "c");
        add(units, "temperature", 5.0 / 9, -160.0 / 9, "degF", "fahrenheit", "f");
        add(units, "temperature", 1, -273.15, "K", "kelvin");
        add(units, "mass", 1, "kg");
        add(units, "mass", 0.4535924, "lb", "lbs", "pounds");
        add(units, "volume", 1, "l", "litres", "liters");
        add(units, "volume", 3.785412, "gal", "gallons");
        add(units, "frequency", 1, "Hz");
        add(units, "frequency", 1000, "kHz");
        add(units, "frequency", 1_000_000, "MHz");
        add(units, "turns", 1, "rpm");
        add(units, "share", 1, "%", "percent", "pct");
        add(units, "tension", 1, "V", "volts");
        add(units, "current", 1, "A", "amps");
        return units;
    }

    private static void add(Map<String, ColumnUnit> units, String quantity, double factor, String... words) {
        add(units, quantity, factor, 0, words);
    }

    private static void add(
            Map<String, ColumnUnit> units, String quantity, double factor, double offset, String... words) {
        ColumnUnit unit = new ColumnUnit(words[0], quantity, factor, offset);
        for (String word : words) {
            units.put(word.toLowerCase(Locale.ROOT), unit);
        }
    }
}
