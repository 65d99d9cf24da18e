package dropline.harness.fault;

import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.harness.pitfile.Measure;
import dropline.harness.pitfile.Quantity;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.OptionalLong;

/** Reads and writes the amount of a fault, which its kind counts in a unit of its own. */
final class Amounts {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    private static final String WHAT = "by";

    private final Pit pit;
    private final Layout layout;

    Amounts(Pit pit, Layout layout) {
        this.pit = pit;
        this.layout = layout;
    }

    /** The amount in whole units of its kind; empty with the reason noted. */
    OptionalLong read(FaultKind kind, Struck struck, String text, Complaints complaints) {
        Optional<Quantity> quantity = Quantity.of(text);
        if (quantity.isEmpty()) {
            complaints.add(WHAT, FaultCode.WRONG_TYPE, text, words(kind), "write by " + example(kind));
            return OptionalLong.empty();
        }
        Optional<BigDecimal> value = inUnits(kind, struck, quantity.get());
        if (value.isEmpty()) {
            boolean without = quantity.get().unit().isEmpty();
            String number = quantity.get().number().toPlainString();
            complaints.add(
                    WHAT,
                    without ? FaultCode.MISSING_UNIT : FaultCode.WRONG_UNIT,
                    text,
                    words(kind),
                    without && kind.unit() != FaultKind.Unit.STEPS
                            ? "write by " + number + " " + unitOf(example(kind))
                            : "write by " + example(kind));
            return OptionalLong.empty();
        }
        return within(kind, struck, text, value.get(), complaints);
    }

    private Optional<BigDecimal> inUnits(FaultKind kind, Struck struck, Quantity quantity) {
        return switch (kind.unit()) {
            case NONE -> Optional.empty();
            case TIME -> time(struck, quantity);
            case BAUD -> Measure.baud().inBase(quantity);
            case PARTS_PER_MILLION -> Measure.partsPerMillion().inBase(quantity);
            case CHARACTERS ->
                quantity.unit().isEmpty()
                        ? Optional.of(quantity.number())
                        : Measure.characters().inBase(quantity);
            case STEPS -> steps(struck.signal(pit, layout), quantity);
        };
    }

    /** A time may also count bits or characters of the segment. */
    private Optional<BigDecimal> time(Struck struck, Quantity quantity) {
        if (quantity.unit().isEmpty() && quantity.number().signum() == 0) {
            return Optional.of(BigDecimal.ZERO);
        }
        Segment segment = struck.segment(pit);
        BigDecimal bits =
                switch (quantity.unit()) {
                    case "bit", "bits" -> BigDecimal.ONE;
                    case "char", "chars", "character", "characters" ->
                        BigDecimal.valueOf(segment.format().bits());
                    default -> null;
                };
        return bits == null
                ? Measure.time().inBase(quantity)
                : Optional.of(quantity.number()
                        .multiply(bits)
                        .multiply(BigDecimal.valueOf(1_000_000_000L))
                        .divide(BigDecimal.valueOf(segment.baud()), 0, RoundingMode.HALF_UP));
    }

    private static Optional<BigDecimal> steps(Signal signal, Quantity quantity) {
        String unit = quantity.unit();
        if (unit.equals("step") || unit.equals("steps")) {
            return Optional.of(quantity.number());
        }
        if (unit.equals("%") && !signal.unit().equals("%")) {
            return Optional.of(rounded(quantity.number()
                    .multiply(BigDecimal.valueOf(signal.steps()))
                    .divide(HUNDRED)));
        }
        if (unit.isEmpty() || unit.equals(signal.unit())) {
            return Optional.of(rounded(
                    quantity.number().divide(BigDecimal.valueOf(signal.resolution()), 3, RoundingMode.HALF_UP)));
        }
        return Optional.empty();
    }

    private static BigDecimal rounded(BigDecimal steps) {
        return steps.setScale(0, RoundingMode.HALF_UP);
    }

    private OptionalLong within(FaultKind kind, Struck struck, String text, BigDecimal value, Complaints complaints) {
        Bounds bounds = Bounds.of(kind, struck, pit, layout);
        BigDecimal size = bounds.eitherSign() ? value.abs() : value;
        boolean whole = value.stripTrailingZeros().scale() <= 0;
        if (!whole
                || size.compareTo(BigDecimal.valueOf(bounds.least())) < 0
                || size.compareTo(BigDecimal.valueOf(bounds.most())) > 0) {
            String least = written(kind, struck, bounds.least());
            String most = written(kind, struck, bounds.most());
            String expected = least + " to " + most + (bounds.eitherSign() ? ", or as much below 0" : "")
                    + (whole ? "" : ", in whole " + finest(kind));
            complaints.add(WHAT, FaultCode.OUT_OF_RANGE, text, expected, usual(kind, struck));
            return OptionalLong.empty();
        }
        if (kind == FaultKind.WRONG_BAUD
                && value.intValue() == struck.segment(pit).baud()) {
            complaints.add(
                    WHAT, FaultCode.OUT_OF_RANGE, text, "another baud rate than the segment's", usual(kind, struck));
            return OptionalLong.empty();
        }
        return OptionalLong.of(value.longValue());
    }

    private String usual(FaultKind kind, Struck struck) {
        long amount = Usual.amount(kind, struck, pit, layout);
        return amount == 0
                ? "leave it out for " + Usual.amountWords(kind)
                : "leave it out for " + written(kind, struck, amount);
    }

    private static String words(FaultKind kind) {
        return switch (kind.unit()) {
            case NONE -> "nothing";
            case TIME -> "a time with its unit: " + Measure.time().unitNames() + ", bits, chars";
            case BAUD -> "a baud rate with its unit: " + Measure.baud().unitNames();
            case PARTS_PER_MILLION ->
                "a deviation with its unit: " + Measure.partsPerMillion().unitNames();
            case CHARACTERS -> "a number of characters";
            case STEPS -> "a number in the signal's own unit, in % of its range, or in steps of its resolution";
        };
    }

    static String example(FaultKind kind) {
        return switch (kind.unit()) {
            case NONE -> "";
            case TIME -> "2 ms";
            case BAUD -> "57.6 kbaud";
            case PARTS_PER_MILLION -> Measure.partsPerMillion().example();
            case CHARACTERS -> Measure.characters().example();
            case STEPS -> "10 %";
        };
    }

    private static String unitOf(String example) {
        return example.substring(example.indexOf(' ') + 1);
    }

    private static String finest(FaultKind kind) {
        return kind.unit() == FaultKind.Unit.STEPS ? "steps" : unitOf(write(kind, 1));
    }

    /** An amount as it can be read again. */
    String written(FaultKind kind, Struck struck, long amount) {
        if (kind.unit() == FaultKind.Unit.STEPS) {
            return steps(struck.signal(pit, layout), amount);
        }
        return write(kind, amount);
    }

    private static String write(FaultKind kind, long amount) {
        return switch (kind.unit()) {
            case NONE, STEPS -> Long.toString(amount);
            case TIME -> Measure.time().write(amount);
            case BAUD -> Measure.baud().write(amount);
            case PARTS_PER_MILLION -> amount + " ppm";
            case CHARACTERS -> amount + (amount == 1 ? " char" : " chars");
        };
    }

    /** In the signal's unit where that has one that can stand in a fault's text. */
    private static String steps(Signal signal, long amount) {
        String unit = signal.unit();
        boolean plain = !unit.isEmpty()
                && unit.chars().noneMatch(letter -> Character.isWhitespace(letter) || letter == '\'')
                && !Character.isDigit(unit.charAt(0))
                && Token.Clause.of(unit).isEmpty();
        if (!plain) {
            return amount + (Math.abs(amount) == 1 ? " step" : " steps");
        }
        BigDecimal value = BigDecimal.valueOf(amount).multiply(BigDecimal.valueOf(signal.resolution()));
        String number = value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
        return number + " " + unit;
    }

    /**
     * How large an amount may be, in the units of its kind.
     *
     * @param eitherSign whether it may be as large below 0
     */
    private record Bounds(long least, long most, boolean eitherSign) {
        private static final long SECOND = 1_000_000_000L;

        static Bounds of(FaultKind kind, Struck struck, Pit pit, Layout layout) {
            return switch (kind) {
                case REPLY_TOO_SOON -> new Bounds(0, SECOND, false);
                case DRIVER_ENABLED_LATE, DRIVER_ENABLED_EARLY, DRIVER_RELEASED_LATE, DRIVER_RELEASED_EARLY ->
                    new Bounds(1, SECOND, false);
                case SLOW_ADAPTER -> new Bounds(1_000, 255_000_000L, false);
                case BABBLING_NODE, RING_OVERRUN -> new Bounds(1, 1_000, false);
                case CLOCK_OFF -> new Bounds(1, 500_000, true);
                case WRONG_BAUD -> new Bounds(300, 4_000_000, false);
                case NEEDLE_SLIPPED, LOST_ZERO ->
                    new Bounds(1, struck.signal(pit, layout).steps(), true);
                case STICKING_NEEDLE, LOST_STEPS ->
                    new Bounds(1, struck.signal(pit, layout).steps(), false);
                default -> new Bounds(1, 3_600 * SECOND, false);
            };
        }
    }
}
