package dropline.harness.pitfile;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as a person writes them: no exponent, no trailing zeros. */
final class Decimals {
    private static final MathContext TWELVE_DIGITS = new MathContext(12);

    private Decimals() {}

    static String write(double value) {
        BigDecimal decimal = new BigDecimal(value).round(TWELVE_DIGITS).stripTrailingZeros();
        return decimal.signum() == 0 ? "0" : decimal.toPlainString();
    }
}
