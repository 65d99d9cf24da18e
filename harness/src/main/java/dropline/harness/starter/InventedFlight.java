package dropline.harness.starter;

import dropline.bus.pit.Control;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import dropline.harness.recording.RecordingColumn;
import dropline.harness.recording.RecordingWriter;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A recording for a pit that has none yet: every signal moves and every control is used, so that a first replay has
 * something to play. Nobody flew it. Values sway slowly inside the middle of their range, what wraps turns, what is on
 * or off changes now and then, each in its own time.
 */
final class InventedFlight {
    /** From one state to the next, ns. */
    static final long PERIOD_NANOS = 40_000_000L;

    private static final long SECOND = 1_000_000_000L;

    /** Periods of swaying, s: primes, so that signals do not keep step. */
    private static final int[] PERIODS = {11, 13, 17, 19, 23, 29, 31, 37, 41, 43};

    private final Pit pit;
    private final Layout layout;

    InventedFlight(Pit pit) {
        this.pit = pit;
        this.layout = Layout.of(pit);
    }

    void write(Path file, int seconds) throws IOException {
        List<RecordingColumn> columns = new ArrayList<>();
        for (Signal signal : pit.signals()) {
            columns.add(new RecordingColumn(signal.column(), decimals(signal.resolution())));
        }
        List<String> controls =
                layout.controls().stream().map(c -> c.control().name()).toList();
        try (RecordingWriter writer = RecordingWriter.create(file, columns, controls)) {
            double[] values = new double[columns.size()];
            int[] positions = new int[controls.size()];
            for (long at = 0; at <= seconds * SECOND; at += PERIOD_NANOS) {
                for (int s = 0; s < values.length; s++) {
                    values[s] = recorded(pit.signals().get(s), value(s, at));
                }
                writer.row(at, values);
                for (int c = 0; c < positions.length; c++) {
                    int position = position(c, at + PERIOD_NANOS / 2);
                    if (position != positions[c]) {
                        positions[c] = position;
                        writer.move(at + PERIOD_NANOS / 2, controls.get(c), position);
                    }
                }
            }
            writer.finish();
        }
    }

    private static double recorded(Signal signal, double value) {
        return (value - signal.offset()) / signal.scale();
    }

    private double value(int index, long atNanos) {
        Signal signal = pit.signals().get(index);
        double seconds = (double) atNanos / SECOND;
        int period = PERIODS[index % PERIODS.length];
        double span = signal.max() - signal.min();
        if (span == signal.resolution()) {
            return ((long) seconds + index) / 7 % 2 == 0 ? signal.min() : signal.max();
        }
        if (signal.wraps()) {
            double turned = seconds / (3.0 * period) + index * 0.37;
            return signal.min() + span * (turned - StrictMath.floor(turned));
        }
        double angle = 2 * StrictMath.PI * seconds / period + index;
        double sway = 0.5 + 0.35 * StrictMath.sin(angle) + 0.08 * StrictMath.sin(3.7 * angle);
        return signal.min() + span * sway;
    }

    /** Every control is used each five seconds, one after another; what springs back is held for a fifth of one. */
    private int position(int index, long atNanos) {
        int step = (int) ((atNanos / SECOND + 3L * index) / 5);
        boolean held = atNanos % (5 * SECOND) < SECOND / 5 && step > 0;
        Control control = layout.controls().get(index).control();
        return switch (control.kind()) {
            case TOGGLE -> step % 2;
            case BUTTON, HELD_BUTTON, HELD_TOGGLE -> held ? 1 : 0;
            case ENCODER -> step;
            case AXIS -> step * 37 % 1000;
            case THREE_WAY_TOGGLE, SELECTOR -> step % control.positions().count();
            case KEY_MATRIX ->
                held && control.matrix() != null
                        ? 1
                                << step
                                        % (control.matrix().rows()
                                                * control.matrix().columns())
                        : 0;
            case LEVER -> control.detents().get(step % control.detents().size()).position();
        };
    }

    /** How many decimals show a resolution. */
    static int decimals(double resolution) {
        int decimals = 0;
        for (double rest = resolution; decimals < 9 && Math.abs(rest - Math.rint(rest)) > 1e-9; decimals++) {
            rest *= 10;
        }
        return decimals;
    }
}
