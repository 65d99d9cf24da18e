package dropline.harness.pitfile;

import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Checks of signals and of the load. */
final class SignalChecks {
    private static final double MOST_STEPS = 4_294_967_295.0;
    private static final double LARGEST_STEP = 2_147_483_648.0;

    private SignalChecks() {}

    static void check(Parts parts, Report report) {
        Map<Integer, Block> numbers = new LinkedHashMap<>();
        for (Block signal : parts.root().blocks(Schema.SIGNALS)) {
            Optional<Integer> number = signal.written(Schema.NUMBER);
            Block earlier = number.isEmpty() ? null : numbers.putIfAbsent(number.get(), signal);
            if (earlier != null) {
                String fix = "give one of them another number; " + earlier.name() + " in "
                        + earlier.at(Schema.NUMBER).line(signal.at(Schema.NUMBER)) + " has it too";
                String expected = "a number that no other signal has";
                report.at(signal.at(Schema.NUMBER), "number", PitCode.NUMBER_CLASH, expected, fix);
            }
            scale(signal, report);
            resolution(signal, report);
        }
        load(parts, report);
    }

    private static void scale(Block signal, Report report) {
        if (signal.get(Schema.SCALE).filter(s -> s == 0).isPresent()) {
            report.at(signal.at(Schema.SCALE), "scale", PitCode.OUT_OF_RANGE, "a number other than 0", null);
        }
    }

    private static void resolution(Block signal, Report report) {
        Optional<Numbers.Span> range = signal.get(Schema.RANGE);
        Optional<Double> resolution = signal.get(Schema.RESOLUTION);
        if (range.isEmpty() || resolution.isEmpty()) {
            return;
        }
        double low = range.get().low();
        double high = range.get().high();
        double step = resolution.get();
        String written = range.get().place().text();
        Tree at = signal.has(Schema.RESOLUTION)
                ? signal.at(Schema.RESOLUTION)
                : range.get().place();
        String line = " (range " + written + ", " + range.get().place().line(at) + ")";
        String found = signal.has(Schema.RESOLUTION)
                ? at.found()
                : "a range smaller than the resolution, which is 1 if left out";
        if (!(step > 0) || step > high - low) {
            String expected = "above 0 and at most " + Decimals.write(high - low) + line;
            String fix =
                    signal.has(Schema.RESOLUTION) ? null : "write resolution: " + Decimals.write((high - low) / 100);
            report.at(at, "resolution", PitCode.OUT_OF_RANGE, found, expected, fix);
        } else if ((high - low) / step > MOST_STEPS || Math.max(Math.abs(low), Math.abs(high)) / step >= LARGEST_STEP) {
            String expected = "coarse enough that 4 bytes hold every value" + line;
            report.at(at, "resolution", PitCode.OUT_OF_RANGE, expected, "write a larger resolution");
        } else if (signal.get(Schema.WRAPS).orElse(false) && !isWhole((high - low) / step)) {
            String expected = "a whole part of " + Decimals.write(high - low) + ", since the signal wraps" + line;
            report.at(at, "resolution", PitCode.OUT_OF_RANGE, at.found(), expected, null);
        }
    }

    private static boolean isWhole(double steps) {
        return Math.abs(steps - Math.rint(steps)) < 1e-6 * Math.max(1, Math.abs(steps));
    }

    private static void load(Parts parts, Report report) {
        Optional<Block> load = parts.root().block(Schema.LOAD);
        int signals = parts.signalNames().size();
        if (load.isPresent()
                && load.get().get(Schema.CHANGES).filter(c -> c > signals).isPresent()) {
            String expected = "at most the number of signals, which is " + signals;
            report.at(load.get().at(Schema.CHANGES), "changes", PitCode.OUT_OF_RANGE, expected, null);
        }
    }
}
