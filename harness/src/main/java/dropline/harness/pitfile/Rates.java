package dropline.harness.pitfile;

import dropline.harness.yaml.Form;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.Optional;

/** Types whose values are quantities in a unit that is not ours: a signal's, or steps of a motor. */
final class Rates {
    /** A quantity as written; {@code unit} without the {@code /s} or {@code /s2} of a speed or an acceleration. */
    record Amount(double number, String unit, Tree.Scalar place) {}

    private Rates() {}

    /** A length of way such as {@code 360 deg}. */
    static Type<Amount> way() {
        return new InUnits("amount above 0 in the signal's unit, such as 360 deg", "");
    }

    /** A speed such as {@code 800 steps/s}. */
    static Type<Amount> speed() {
        return new InUnits("speed above 0, such as 800 steps/s or 90 deg/s", "/s");
    }

    /** An acceleration such as {@code 2000 steps/s2}. */
    static Type<Amount> acceleration() {
        return new InUnits("acceleration above 0, such as 2000 steps/s2 or 900 deg/s2", "/s2");
    }

    private static final class InUnits extends Type.OfText<Amount> {
        private final String ending;

        InUnits(String words, String ending) {
            super(words);
            this.ending = ending;
        }

        @Override
        public Form form() {
            return new Form.Pattern(Quantity.pattern("\\D.*" + ending.replace("2", "[2²]")));
        }

        @Override
        Optional<Amount> readText(Tree.Scalar text, String key, Report report) {
            Optional<Quantity> quantity = Quantity.of(text.text());
            if (quantity.isEmpty()) {
                report.at(text, key, PitCode.WRONG_TYPE, words(), null);
                return Optional.empty();
            }
            String unit = quantity.get().unit().replace("²", "2");
            if (unit.isEmpty() || !unit.endsWith(ending)) {
                report.at(text, key, unit.isEmpty() ? PitCode.MISSING_UNIT : PitCode.WRONG_UNIT, words(), null);
                return Optional.empty();
            }
            double number = quantity.get().number().doubleValue();
            if (!(number > 0)) {
                report.at(text, key, PitCode.OUT_OF_RANGE, words(), null);
                return Optional.empty();
            }
            String bare = unit.substring(0, unit.length() - ending.length()).strip();
            return Optional.of(new Amount(number, bare, text));
        }

        @Override
        public Optional<Amount> scaled(Amount amount, Scale scale) {
            return Optional.of(new Amount(scale.of(amount.number()), amount.unit(), amount.place()));
        }
    }
}
