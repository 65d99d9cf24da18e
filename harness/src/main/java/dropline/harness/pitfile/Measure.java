package dropline.harness.pitfile;

import dropline.harness.problem.Nearest;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** A kind of quantity: its units and what a base unit of it is. */
public final class Measure {
    private final String word;
    private final String example;
    private final Map<String, BigDecimal> units = new LinkedHashMap<>();

    private Measure(String word, String example) {
        this.word = word;
        this.example = example;
    }

    /** Times, in nanoseconds. */
    public static Measure time() {
        return new Measure("time", "20 ms")
                .with("ns", "1")
                .with("us", "1e3")
                .with("ms", "1e6")
                .with("s", "1e9")
                .with("min", "6e10")
                .with("h", "3.6e12");
    }

    /** Baud rates, in bits a second. */
    public static Measure baud() {
        return new Measure("baud rate", "500 kbaud")
                .with("baud", "1")
                .with("kbaud", "1e3")
                .with("Mbaud", "1e6");
    }

    /** Frequencies, in hertz. */
    static Measure frequency() {
        return new Measure("frequency", "16 MHz")
                .with("Hz", "1")
                .with("kHz", "1e3")
                .with("MHz", "1e6");
    }

    /** Silences, in tenths of a bit. */
    static Measure bits() {
        return new Measure("silence", "35 bits").with("bit", "10").with("bits", "10");
    }

    /** Deviations of a clock, in parts in a million. */
    public static Measure partsPerMillion() {
        return new Measure("deviation", "60000 ppm").with("ppm", "1").with("%", "1e4");
    }

    /** Currents, in microamperes. */
    public static Measure current() {
        return new Measure("current", "350 mA")
                .with("uA", "1")
                .with("mA", "1e3")
                .with("A", "1e6");
    }

    /** Angles, in thousandths of a degree. */
    static Measure angle() {
        return new Measure("angle", "270 deg").with("deg", "1e3");
    }

    /** Resistances, in ohms. */
    public static Measure resistance() {
        return new Measure("resistance", "120 ohm")
                .with("ohm", "1")
                .with("kohm", "1e3")
                .with("Mohm", "1e6");
    }

    /** Voltages, in millivolts. */
    public static Measure voltage() {
        return new Measure("voltage", "12 V").with("mV", "1").with("V", "1e3");
    }

    /** Lengths, in millimetres. */
    public static Measure length() {
        return new Measure("length", "3 m").with("mm", "1").with("cm", "10").with("m", "1e3");
    }

    /** Resistances of plugs and terminals, in thousandths of an ohm. */
    static Measure jointResistance() {
        return new Measure("resistance", "20 mohm").with("mohm", "1").with("ohm", "1e3");
    }

    /** Numbers of characters. */
    public static Measure characters() {
        return new Measure("number of characters", "16 chars")
                .with("chars", "1")
                .with("char", "1")
                .with("characters", "1")
                .with("character", "1");
    }

    private Measure with(String unit, String inBase) {
        units.put(unit, new BigDecimal(inBase));
        return this;
    }

    /** What it measures: {@code time}. */
    public String word() {
        return word;
    }

    /** Its units, the finest first: {@code ns, us, ms}. */
    public String unitNames() {
        return String.join(", ", units.keySet());
    }

    /** A regular expression for a quantity in one of its units. */
    String pattern() {
        return Quantity.pattern("(?:" + String.join("|", units.keySet()).replace("us", "[uµμ]s") + ")");
    }

    /** One way to write it: {@code 20 ms}. */
    public String example() {
        return example;
    }

    /** A quantity in base units; empty where its unit is none of these. */
    public Optional<BigDecimal> inBase(Quantity quantity) {
        BigDecimal factor = units.get(quantity.unit().replace('µ', 'u').replace('μ', 'u'));
        return Optional.ofNullable(factor).map(quantity.number()::multiply);
    }

    /** The value in whole base units, or empty with the reason reported. {@code text} is a part of {@code place}. */
    Optional<Long> read(String text, Tree.Scalar place, String key, String words, Report report) {
        Optional<Quantity> quantity = Quantity.of(text);
        if (quantity.isEmpty()) {
            report.at(place, key, PitCode.WRONG_TYPE, words, "write a number and its unit, such as " + example);
            return Optional.empty();
        }
        BigDecimal number = quantity.get().number();
        String unit = quantity.get().unit();
        if (unit.isEmpty() && number.signum() == 0) {
            return Optional.of(0L);
        }
        BigDecimal factor = units.get(unit.replace('µ', 'u').replace('μ', 'u'));
        if (factor == null) {
            wrongUnit(quantity.get(), place, key, report);
            return Optional.empty();
        }
        BigDecimal value = number.multiply(factor).stripTrailingZeros();
        if (value.scale() > 0) {
            report.at(place, key, PitCode.OUT_OF_RANGE, "a " + word + " in whole " + finest(), null);
            return Optional.empty();
        }
        if (value.abs().compareTo(BigDecimal.valueOf(Long.MAX_VALUE)) > 0) {
            report.at(place, key, PitCode.OUT_OF_RANGE, words, null);
            return Optional.empty();
        }
        return Optional.of(value.setScale(0, RoundingMode.UNNECESSARY).longValueExact());
    }

    private void wrongUnit(Quantity quantity, Tree.Scalar place, String key, Report report) {
        String expected = "a " + word + " with its unit: " + unitNames();
        if (quantity.unit().isEmpty()) {
            String fix =
                    "write the unit, such as " + key + ": " + quantity.number().toPlainString() + " " + unitOf(example);
            report.at(place, key, PitCode.MISSING_UNIT, expected, fix);
        } else {
            String fix = Nearest.to(quantity.unit(), units.keySet())
                    .map(u -> "write " + quantity.number().toPlainString() + " " + u)
                    .orElse(null);
            report.at(place, key, PitCode.WRONG_UNIT, expected, fix);
        }
    }

    private String finest() {
        return word.equals("silence")
                ? "tenths of a bit"
                : units.keySet().iterator().next();
    }

    private static String unitOf(String example) {
        return example.substring(example.indexOf(' ') + 1);
    }

    /** A value in base units as a person writes it, in the largest unit that needs no more than three decimals. */
    public String write(long value) {
        BigDecimal whole = BigDecimal.valueOf(value);
        String best = "";
        for (Map.Entry<String, BigDecimal> unit : units.entrySet()) {
            BigDecimal shown =
                    whole.divide(unit.getValue(), MathContext.DECIMAL64).stripTrailingZeros();
            if (best.isEmpty() || (shown.scale() <= 3 && shown.abs().compareTo(BigDecimal.ONE) >= 0)) {
                best = shown.toPlainString() + " " + unit.getKey();
            }
        }
        return best;
    }
}
