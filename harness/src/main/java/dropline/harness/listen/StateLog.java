package dropline.harness.listen;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.protocol.Bytes;
import dropline.protocol.Heard;
import java.io.Closeable;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;

/**
 * The state that somebody's controller sends, written as a recording: long CSV, a line for each value. Every signal of
 * the pit stands in it from the begin, at nought or as near as its range allows, until it is heard.
 */
public final class StateLog implements Hearer, Closeable {
    private static final int DECIMALS = 9;

    private final Pit pit;
    private final SignalNumbers numbers;
    private final CsvWriter out;
    private final boolean[] heard;

    private StateLog(Pit pit, Segment segment, CsvWriter out) {
        this.pit = pit;
        numbers = new SignalNumbers(pit, segment);
        this.out = out;
        heard = new boolean[pit.signals().size()];
    }

    public static StateLog create(Path file, Pit pit, int segmentIndex) throws IOException {
        CsvWriter out = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(file);
        out.writeRecord("time_s", "signal", "value");
        StateLog log = new StateLog(pit, pit.segments().get(segmentIndex), out);
        for (Signal signal : pit.signals()) {
            log.write(0, signal, Math.max(signal.lowest(), Math.min(0, signal.highest())));
        }
        return log;
    }

    @Override
    public void frame(Heard frame, long startNanos, long endNanos, Bytes bytes) {
        for (Heard.Value value : frame.values()) {
            int index = numbers.signal(frame, value.number());
            if (index >= 0) {
                heard[index] = true;
                write(startNanos, pit.signals().get(index), numbers.value(index, value));
            }
        }
    }

    private void write(long atNanos, Signal signal, long steps) {
        double recorded = (steps * signal.resolution() - signal.offset()) / signal.scale();
        out.writeRecord(decimal(atNanos / 1e9), signal.column(), decimal(recorded));
    }

    /** How many of the pit's signals were heard so far. */
    public int heard() {
        int count = 0;
        for (boolean one : heard) {
            count += one ? 1 : 0;
        }
        return count;
    }

    private static String decimal(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}
