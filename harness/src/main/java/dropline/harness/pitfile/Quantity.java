package dropline.harness.pitfile;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number and its unit as written: {@code 500 kbaud}, {@code 20ms}, {@code 20%}.
 *
 * @param unit empty where none was written
 */
public record Quantity(BigDecimal number, String unit) {
    private static final Pattern FORM = Pattern.compile("([+-]?\\d{1,18}(?:\\.\\d{1,12})?)\\s*(\\D.*)?");

    /** A regular expression for a decimal number and a unit of that form. */
    static String pattern(String unit) {
        return "[+-]?\\d{1,18}(?:\\.\\d{1,12})?\\s*" + unit;
    }

    /** Reads a quantity; empty where the text does not start with a decimal number. */
    public static Optional<Quantity> of(String text) {
        Matcher matcher = FORM.matcher(text.strip());
        if (!matcher.matches()) {
            return Optional.empty();
        }
        String unit = matcher.group(2);
        return Optional.of(new Quantity(new BigDecimal(matcher.group(1)), unit == null ? "" : unit.strip()));
    }
}
