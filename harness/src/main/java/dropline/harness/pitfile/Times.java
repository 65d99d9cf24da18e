package dropline.harness.pitfile;

import dropline.bus.chance.Distribution;
import dropline.harness.yaml.Form;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Types whose values are times, rates and random times. */
final class Times {
    static final long MICRO = 1_000;
    static final long MILLI = 1_000_000;
    static final long SECOND = 1_000_000_000;
    static final long HOUR = 3_600 * SECOND;

    private static final Pattern EXPONENTIAL =
            Pattern.compile("(.+?)\\s*\\+\\s*exponential\\s+(.+?)(?:\\s*,\\s*at most\\s+(.+))?");
    private static final Pattern UNIFORM = Pattern.compile("(.+?)\\s*\\.\\.\\s*(.+)");

    private Times() {}

    static Type<Long> time(long leastNanos, long mostNanos) {
        return Numbers.measure(Measure.time(), leastNanos, mostNanos);
    }

    /** A time, or a word that stands for 0. */
    static Type<Long> timeOr(String word, long leastNanos, long mostNanos) {
        return Numbers.measureOr(word, 0, Measure.time(), leastNanos, mostNanos);
    }

    /** A rate such as {@code 25 Hz}, as the period it means, ns; or a word that stands for 0. */
    static Type<Long> periodOr(String word) {
        return new Type.OfText<>(word + ", or a rate, 0.1 Hz..1 kHz") {
            @Override
            public Form form() {
                return new Form.Any(List.of(Form.choice(word), new Form.Pattern(Quantity.pattern("k?Hz"))));
            }

            @Override
            Optional<Long> readText(Tree.Scalar text, String key, Report report) {
                if (text.text().equals(word)) {
                    return Optional.of(0L);
                }
                Optional<Quantity> quantity = Quantity.of(text.text());
                if (quantity.isEmpty()) {
                    report.at(text, key, PitCode.WRONG_TYPE, words(), "write a rate such as 25 Hz");
                    return Optional.empty();
                }
                String unit = quantity.get().unit();
                if (!unit.equals("Hz") && !unit.equals("kHz")) {
                    PitCode code = unit.isEmpty() ? PitCode.MISSING_UNIT : PitCode.WRONG_UNIT;
                    report.at(text, key, code, "a rate with its unit: Hz, kHz", "write a rate such as 25 Hz");
                    return Optional.empty();
                }
                BigDecimal hertz = quantity.get().number().movePointRight(unit.equals("kHz") ? 3 : 0);
                if (hertz.compareTo(new BigDecimal("0.1")) < 0 || hertz.compareTo(new BigDecimal(1000)) > 0) {
                    report.at(text, key, PitCode.OUT_OF_RANGE, words(), null);
                    return Optional.empty();
                }
                return Optional.of(BigDecimal.valueOf(SECOND)
                        .divide(hertz, 0, RoundingMode.HALF_UP)
                        .longValueExact());
            }
        };
    }

    /** A random time: constant, even between two, or a base plus an exponential one. */
    static Type<Distribution> distribution() {
        return new RandomTime();
    }

    private static final class RandomTime extends Type.OfText<Distribution> {
        RandomTime() {
            super("time (100 us), span (100..300 us), or base and tail (100 us + exponential 50 us, at most 2 ms)");
        }

        @Override
        public Form form() {
            String time = Measure.time().pattern();
            String bare = Quantity.pattern("");
            return new Form.Pattern("(?:" + time + "|(?:" + bare + "|" + time + ")\\s*\\.\\.\\s*" + time + "|" + time
                    + "\\s*\\+\\s*exponential\\s+" + time + "(?:\\s*,\\s*at most\\s+" + time + ")?)");
        }

        @Override
        Optional<Distribution> readText(Tree.Scalar text, String key, Report report) {
            String written = text.text().strip();
            Matcher exponential = EXPONENTIAL.matcher(written);
            if (exponential.matches()) {
                return exponential(exponential, text, key, report);
            }
            Matcher uniform = UNIFORM.matcher(written);
            return uniform.matches()
                    ? uniform(uniform.group(1), uniform.group(2), text, key, report)
                    : time(written, text, key, report).map(Distribution::constant);
        }

        @Override
        public Optional<Distribution> scaled(Distribution value, Scale scale) {
            return scale.of(value);
        }

        private Optional<Distribution> exponential(Matcher parts, Tree.Scalar text, String key, Report report) {
            Optional<Long> base = time(parts.group(1), text, key, report);
            Optional<Long> mean = base.isEmpty() ? base : time(parts.group(2), text, key, report);
            if (mean.isEmpty()) {
                return Optional.empty();
            }
            if (parts.group(3) == null) {
                return Optional.of(Distribution.exponential(base.get(), mean.get(), Long.MAX_VALUE));
            }
            Optional<Long> most = time(parts.group(3), text, key, report);
            if (most.isPresent() && most.get() < base.get()) {
                report.at(text, key, PitCode.IMPOSSIBLE_RANGE, "a maximum of at least the base", null);
                return Optional.empty();
            }
            return most.map(max -> Distribution.exponential(base.get(), mean.get(), max));
        }

        private Optional<Distribution> uniform(String low, String high, Tree.Scalar text, String key, Report report) {
            Optional<Long> to = time(high, text, key, report);
            if (to.isEmpty()) {
                return Optional.empty();
            }
            String unit = Quantity.of(high).map(Quantity::unit).orElse("");
            boolean bare = Quantity.of(low).map(q -> q.unit().isEmpty()).orElse(false);
            Optional<Long> from = time(bare ? low + " " + unit : low, text, key, report);
            if (from.isPresent() && from.get() > to.get()) {
                report.at(text, key, PitCode.IMPOSSIBLE_RANGE, "a span that does not end before it begins", null);
                return Optional.empty();
            }
            return from.map(least -> Distribution.uniform(least, to.get()));
        }

        private Optional<Long> time(String part, Tree.Scalar text, String key, Report report) {
            Optional<Long> nanos = Measure.time().read(part, text, key, words(), report);
            if (nanos.isPresent() && (nanos.get() < 0 || nanos.get() > HOUR)) {
                report.at(text, key, PitCode.OUT_OF_RANGE, "times of 0 ns..1 h", null);
                return Optional.empty();
            }
            return nanos;
        }
    }
}
