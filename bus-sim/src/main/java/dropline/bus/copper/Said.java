package dropline.bus.copper;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers inside the words that say what a ruling rests on. */
final class Said {
    private Said() {}

    /** To hundredths, without noughts at its end: {@code 4.75}, {@code 120}. */
    static String number(double value) {
        BigDecimal hundredths =
                BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).stripTrailingZeros();
        return hundredths.signum() == 0 ? "0" : hundredths.toPlainString();
    }

    static String metres(double metres) {
        return number(metres) + " m";
    }
}
