package dropline.harness.pitfile;

import dropline.bus.pit.Gauge;
import dropline.harness.yaml.Form;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.math.BigDecimal;
import java.util.Optional;

/** A wire's thickness as written: {@code 18 AWG}, {@code 0.75 mm2}. Whether it is stranded stands elsewhere. */
final class Gauges extends Type.OfText<Gauge> {
    private static final BigDecimal THINNEST = new BigDecimal("0.005");
    private static final BigDecimal THICKEST = new BigDecimal("120");

    Gauges() {
        super("a whole number of AWG, " + Gauge.THICKEST_AWG + ".." + Gauge.THINNEST_AWG + " AWG, or mm2, " + THINNEST
                + ".." + THICKEST + " mm2");
    }

    @Override
    public Form form() {
        return new Form.Pattern(Quantity.pattern("(?:AWG|mm[2²])"));
    }

    @Override
    Optional<Gauge> readText(Tree.Scalar text, String key, Report report) {
        Optional<Quantity> written = Quantity.of(text.text());
        if (written.isEmpty()) {
            report.at(text, key, PitCode.WRONG_TYPE, words(), "write " + key + ": 18 AWG or " + key + ": 0.75 mm2");
            return Optional.empty();
        }
        BigDecimal number = written.get().number();
        return switch (written.get().unit()) {
            case "AWG" -> inSeries(number, text, key, report);
            case "mm2", "mm²" -> {
                if (number.compareTo(THINNEST) < 0 || number.compareTo(THICKEST) > 0) {
                    report.at(text, key, PitCode.OUT_OF_RANGE, words(), null);
                    yield Optional.empty();
                }
                yield Optional.of(Gauge.metric(number.doubleValue(), true));
            }
            case "" -> {
                String fix = "write " + key + ": " + number.toPlainString() + " AWG or " + number.toPlainString()
                        + " mm2, whichever it is";
                report.at(text, key, PitCode.MISSING_UNIT, words(), fix);
                yield Optional.empty();
            }
            default -> {
                report.at(text, key, PitCode.WRONG_UNIT, words(), null);
                yield Optional.empty();
            }
        };
    }

    private Optional<Gauge> inSeries(BigDecimal number, Tree.Scalar text, String key, Report report) {
        boolean whole = number.stripTrailingZeros().scale() <= 0;
        if (!whole
                || number.compareTo(BigDecimal.valueOf(Gauge.THICKEST_AWG)) < 0
                || number.compareTo(BigDecimal.valueOf(Gauge.THINNEST_AWG)) > 0) {
            report.at(text, key, PitCode.OUT_OF_RANGE, words(), "thicker wires, such as 2/0, are written in mm2");
            return Optional.empty();
        }
        return Optional.of(Gauge.awg(number.intValueExact(), true));
    }
}
