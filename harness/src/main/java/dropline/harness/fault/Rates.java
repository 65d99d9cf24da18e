package dropline.harness.fault;

import dropline.bus.fault.FaultKind;
import dropline.bus.fault.FaultKind.Timing;
import dropline.harness.pitfile.Quantity;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads and writes the rate of a fault: a chance in percent, or so many times a second. */
final class Rates {
    /** Nothing in a pit goes wrong more often than that, and a run that strikes without end would never end. */
    private static final BigDecimal MOST_A_SECOND = BigDecimal.valueOf(1_000);

    private static final BigDecimal SIXTY = BigDecimal.valueOf(60);
    private static final Map<String, BigDecimal> CHANCE = Map.of("%", new BigDecimal("0.01"));
    private static final Map<String, BigDecimal> EVENT = Map.of(
            "/s", BigDecimal.ONE, "Hz", BigDecimal.ONE, "/min", BigDecimal.ONE.divide(SIXTY, MathContext.DECIMAL64));
    private static final String WHAT = "rate";

    private Rates() {}

    /** The rate; empty with the reason noted. The kind has one. */
    static OptionalDouble read(FaultKind kind, String text, Complaints complaints) {
        boolean chance = kind.timing() == Timing.CHANCE;
        String expected = chance ? "a chance, above 0 % up to 100 %" : "a rate, above 0/s up to 1000/s";
        String fix = "write " + (chance ? "rate 20%" : "rate 2/s");
        Optional<Quantity> quantity = Quantity.of(text);
        if (quantity.isEmpty()) {
            complaints.add(WHAT, FaultCode.WRONG_TYPE, text, expected, fix);
            return OptionalDouble.empty();
        }
        BigDecimal number = quantity.get().number();
        BigDecimal factor = (chance ? CHANCE : EVENT).get(quantity.get().unit());
        if (factor == null) {
            boolean without = quantity.get().unit().isEmpty();
            complaints.add(WHAT, without ? FaultCode.MISSING_UNIT : FaultCode.WRONG_UNIT, text, expected, fix);
            return OptionalDouble.empty();
        }
        BigDecimal rate = number.multiply(factor);
        if (rate.signum() <= 0 || rate.compareTo(chance ? BigDecimal.ONE : MOST_A_SECOND) > 0) {
            complaints.add(WHAT, FaultCode.OUT_OF_RANGE, text, expected, fix);
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(rate.doubleValue());
    }

    /** A rate as it can be read again. */
    static String written(FaultKind kind, double rate) {
        BigDecimal number = new BigDecimal(Double.toString(rate));
        return kind.timing() == Timing.CHANCE ? plain(number.movePointRight(2)) + "%" : plain(number) + "/s";
    }

    private static String plain(BigDecimal number) {
        return number.stripTrailingZeros().toPlainString();
    }
}
