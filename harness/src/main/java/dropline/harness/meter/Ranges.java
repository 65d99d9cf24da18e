package dropline.harness.meter;

import dropline.bus.copper.Range;
import dropline.bus.copper.Reading;
import dropline.bus.rule.Unit;
import dropline.harness.ruling.Amounts;

/** Readings and ranges as a meter shows them. */
final class Ranges {
    /** From here on a meter shows that nothing conducts; ohm. */
    private static final double OPEN_OHMS = 1e6;

    private Ranges() {}

    /** {@code 55.1 to 64.1 ohm}, {@code open}. */
    static String of(Reading reading, Range range) {
        if (reading.unit() == Unit.OHMS && range.high() >= OPEN_OHMS) {
            return range.low() >= OPEN_OHMS ? "open" : amount(reading, range.low()) + " to open";
        }
        double low = reading.unit() == Unit.OHMS ? Math.max(0, range.low()) : range.low();
        String from = amount(reading, low);
        String to = amount(reading, range.high());
        String unit = to.substring(to.indexOf(' '));
        return (from.endsWith(unit) ? from.substring(0, from.length() - unit.length()) : from) + " to " + to;
    }

    static String amount(Reading reading, double value) {
        return Amounts.of(value, reading.unit());
    }
}
