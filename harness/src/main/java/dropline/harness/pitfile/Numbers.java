package dropline.harness.pitfile;

import dropline.harness.yaml.Form;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Types whose values are numbers and quantities. */
final class Numbers {
    private static final String NUMBER = "[+-]?\\d{1,15}(?:\\.\\d{1,12})?(?:[eE][+-]?\\d{1,2})?";
    private static final Pattern SHARE = Pattern.compile("(\\d{1,9}(?:\\.\\d{1,12})?)(?:\\s*/\\s*(\\d{1,9}))?");
    private static final Pattern WHOLE = Pattern.compile("[+-]?\\d+");
    private static final Pattern ONE = Pattern.compile(NUMBER);
    private static final Pattern TWO = Pattern.compile("(" + NUMBER + ")\\s*\\.\\.\\s*(" + NUMBER + ")");

    /**
     * From one value to a greater one.
     *
     * @param place where it is written
     */
    record Span(double low, double high, Tree.Scalar place) {}

    /** A speed in a signal's unit per second. */
    record Speed(double perSecond, String unit, Tree.Scalar place) {}

    private Numbers() {}

    /** A whole number within bounds. */
    static Type<Integer> whole(int least, int most) {
        return new Type.OfText<>("whole number, " + least + ".." + most) {
            @Override
            public Form form() {
                return new Form.Whole(least, most);
            }

            @Override
            Optional<Integer> readText(Tree.Scalar text, String key, Report report) {
                if (!WHOLE.matcher(text.text()).matches()) {
                    report.at(text, key, PitCode.WRONG_TYPE, words(), null);
                    return Optional.empty();
                }
                BigDecimal number = new BigDecimal(text.text());
                if (number.compareTo(BigDecimal.valueOf(least)) < 0 || number.compareTo(BigDecimal.valueOf(most)) > 0) {
                    report.at(text, key, PitCode.OUT_OF_RANGE, words(), null);
                    return Optional.empty();
                }
                return Optional.of(number.intValueExact());
            }

            @Override
            public Optional<Integer> scaled(Integer value, Scale scale) {
                return scale.within(value, least, most).map(Math::toIntExact);
            }
        };
    }

    /** A number that may have decimals. */
    static Type<Double> number() {
        return new Type.OfText<>("number") {
            @Override
            public Form form() {
                return new Form.Decimal();
            }

            @Override
            Optional<Double> readText(Tree.Scalar text, String key, Report report) {
                if (ONE.matcher(text.text()).matches()) {
                    return Optional.of(Double.parseDouble(text.text()));
                }
                report.at(text, key, PitCode.WRONG_TYPE, words(), "write it with a decimal point and without a unit");
                return Optional.empty();
            }
        };
    }

    /** A part of one: {@code 1}, {@code 0.125} or {@code 1/8}. */
    static Type<Double> share() {
        return new Type.OfText<>("a number above 0 and up to 1, or a part such as 1/8") {
            @Override
            public Form form() {
                return new Form.Any(List.of(new Form.Decimal(), new Form.Pattern(SHARE.pattern())));
            }

            @Override
            Optional<Double> readText(Tree.Scalar text, String key, Report report) {
                Matcher part = SHARE.matcher(text.text().strip());
                if (!part.matches()) {
                    report.at(text, key, PitCode.WRONG_TYPE, words(), null);
                    return Optional.empty();
                }
                double whole = Double.parseDouble(part.group(1));
                double value = part.group(2) == null ? whole : whole / Double.parseDouble(part.group(2));
                if (!(value > 0 && value <= 1)) {
                    report.at(text, key, PitCode.OUT_OF_RANGE, words(), null);
                    return Optional.empty();
                }
                return Optional.of(value);
            }

            @Override
            public Optional<Double> scaled(Double value, Scale scale) {
                return Optional.of(scale.of(value)).filter(share -> share <= 1);
            }
        };
    }

    /** Two numbers, the second above the first. */
    static Type<Span> span() {
        return new Type.OfText<>("least..greatest value, such as 0..360") {
            @Override
            public Form form() {
                return new Form.Pattern(TWO.pattern());
            }

            @Override
            Optional<Span> readText(Tree.Scalar text, String key, Report report) {
                Matcher matcher = TWO.matcher(text.text().strip());
                if (!matcher.matches()) {
                    report.at(text, key, PitCode.WRONG_TYPE, words(), null);
                    return Optional.empty();
                }
                double low = Double.parseDouble(matcher.group(1));
                double high = Double.parseDouble(matcher.group(2));
                if (!(high > low)) {
                    String fix = high < low ? "write " + key + ": " + matcher.group(2) + ".." + matcher.group(1) : null;
                    report.at(text, key, PitCode.IMPOSSIBLE_RANGE, "a range that ends above its beginning", fix);
                    return Optional.empty();
                }
                return Optional.of(new Span(low, high, text));
            }
        };
    }

    /** A speed such as {@code 90 deg/s}; whether its unit is the signal's is checked where the signal is known. */
    static Type<Speed> speed() {
        return new Type.OfText<>("speed above 0 in the signal's unit a second, such as 90 deg/s") {
            @Override
            public Form form() {
                return new Form.Pattern(Quantity.pattern("\\D*/s"));
            }

            @Override
            Optional<Speed> readText(Tree.Scalar text, String key, Report report) {
                Optional<Quantity> quantity = Quantity.of(text.text());
                if (quantity.isEmpty()) {
                    report.at(text, key, PitCode.WRONG_TYPE, words(), null);
                    return Optional.empty();
                }
                String unit = quantity.get().unit();
                if (!unit.endsWith("/s")) {
                    PitCode code = unit.isEmpty() ? PitCode.MISSING_UNIT : PitCode.WRONG_UNIT;
                    report.at(text, key, code, words(), null);
                    return Optional.empty();
                }
                double perSecond = quantity.get().number().doubleValue();
                if (!(perSecond > 0)) {
                    report.at(text, key, PitCode.OUT_OF_RANGE, words(), null);
                    return Optional.empty();
                }
                return Optional.of(new Speed(
                        perSecond, unit.substring(0, unit.length() - 2).strip(), text));
            }

            @Override
            public Optional<Speed> scaled(Speed value, Scale scale) {
                return Optional.of(new Speed(scale.of(value.perSecond()), value.unit(), value.place()));
            }
        };
    }

    /** A quantity within bounds, in base units. */
    static Type<Long> measure(Measure measure, long least, long most) {
        return new Bounded(measure, least, most, "", 0);
    }

    /** A quantity within bounds, or a word that stands for one value outside of them. */
    static Type<Long> measureOr(String word, long value, Measure measure, long least, long most) {
        return new Bounded(measure, least, most, word, value);
    }

    private static final class Bounded extends Type.OfText<Long> {
        private final Measure measure;
        private final long least;
        private final long most;
        private final String word;
        private final long wordValue;

        Bounded(Measure measure, long least, long most, String word, long wordValue) {
            super((word.isEmpty() ? "" : word + ", or a ") + measure.word() + ", " + measure.write(least) + ".."
                    + measure.write(most));
            this.measure = measure;
            this.least = least;
            this.most = most;
            this.word = word;
            this.wordValue = wordValue;
        }

        @Override
        public Form form() {
            Form quantity = new Form.Pattern(measure.pattern());
            return word.isEmpty() ? quantity : new Form.Any(List.of(Form.choice(word), quantity));
        }

        @Override
        Optional<Long> readText(Tree.Scalar text, String key, Report report) {
            if (!word.isEmpty() && text.text().equals(word)) {
                return Optional.of(wordValue);
            }
            Optional<Long> value = measure.read(text.text(), text, key, words(), report);
            if (value.isPresent() && (value.get() < least || value.get() > most)) {
                report.at(text, key, PitCode.OUT_OF_RANGE, words(), null);
                return Optional.empty();
            }
            return value;
        }

        @Override
        public Optional<Long> scaled(Long value, Scale scale) {
            boolean isWord = !word.isEmpty() && value == wordValue;
            return isWord ? Optional.empty() : scale.within(value, least, most);
        }
    }
}
