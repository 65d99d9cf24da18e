package dropline.harness.ruling;

import dropline.bus.rule.Unit;
import dropline.harness.report.Figures;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Amounts as people read them: three figures, and the prefix that suits them. */
public final class Amounts {
    private static final MathContext THREE = new MathContext(3, RoundingMode.HALF_UP);

    private Amounts() {}

    /** {@code 248 mV}, {@code 1.2 kohm}, {@code 12 unit loads}; a dash for what is no number. */
    public static String of(double amount, Unit unit) {
        if (Double.isNaN(amount)) {
            return "-";
        }
        if (Double.isInfinite(amount)) {
            return amount > 0 ? "endless" : "-endless";
        }
        return switch (unit) {
            case SHARE -> Figures.percent(amount);
            case SECONDS -> Figures.time(Math.round(amount * 1e9));
            case VOLTS, AMPERES, WATTS -> prefixed(amount, unit.symbol(), 1e-3, "m");
            case OHMS -> Math.abs(amount) < 10_000 ? plain(amount, "ohm") : plain(amount / 1000, "kohm");
            case NUMBER, UNIT_LOADS, METRES -> plain(amount, unit.symbol());
        };
    }

    private static String prefixed(double amount, String symbol, double small, String prefix) {
        return Math.abs(amount) < 1 && amount != 0 ? plain(amount / small, prefix + symbol) : plain(amount, symbol);
    }

    /** To three figures, whole numbers never cut; what vanishes in them is 0. */
    private static String plain(double amount, String symbol) {
        BigDecimal three = BigDecimal.valueOf(amount).setScale(3, RoundingMode.HALF_UP);
        BigDecimal rounded = Math.abs(amount) >= 100 ? three.setScale(0, RoundingMode.HALF_UP) : three.round(THREE);
        String number =
                rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
        return symbol.isEmpty() ? number : number + " " + symbol;
    }
}
