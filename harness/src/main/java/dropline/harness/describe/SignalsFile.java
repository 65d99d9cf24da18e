package dropline.harness.describe;

import dropline.harness.describe.ColumnSummary.Kind;
import dropline.harness.recording.ColumnUnit;
import dropline.harness.yaml.YamlText;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;

/**
 * The {@code signals:} section that a recording suggests, for a pit file. Ranges are what was seen, rounded outwards to
 * a nice figure; resolutions the smallest step seen, rounded down to one, but no finer than two bytes can carry.
 */
public final class SignalsFile {
    private static final double TWO_BYTES = 65_535;
    private static final double LARGEST_STEP = 0x1p31;
    private static final double PARTS = 10;
    /** What lies beyond is no figure of a cockpit, and more digits than a pit file takes. */
    private static final double FARTHEST = 1e14;

    private static final double FINEST = 1e-12;

    private final RecordingSummary summary;
    private final Set<String> names = new HashSet<>();
    private final StringBuilder text = new StringBuilder();

    private SignalsFile(RecordingSummary summary) {
        this.summary = summary;
    }

    /** The file's text. Lines end in {@code \n}. */
    public static String of(RecordingSummary summary) {
        return new SignalsFile(summary).text();
    }

    private String text() {
        Path name = Path.of(summary.file()).getFileName();
        text.append("# Suggested by ")
                .append(name == null ? summary.file() : name)
                .append(", ");
        text.append(Figures.time(summary.lastsNanos()))
                .append(" long. It shows what was seen in that time, not what\n");
        text.append("# there can be: widen each range to all that its signal can do, before you build on it.\n");
        boolean moves = summary.columns().stream().anyMatch(column -> column.kind() != Kind.NEVER_MOVES);
        text.append(moves ? "signals:\n" : "# Nothing moved.\nsignals: {}\n");
        int number = 1;
        for (ColumnSummary column : summary.columns()) {
            signal(column, number++);
        }
        return text.toString();
    }

    private void signal(ColumnSummary column, int number) {
        boolean still = column.kind() == Kind.NEVER_MOVES;
        String name = name(column.name());
        text.append(still ? "  # " : "  ")
                .append(YamlText.scalar(name))
                .append(": {number: ")
                .append(number);
        if (!column.unit().isEmpty()) {
            text.append(", unit: ").append(YamlText.scalar(column.unit()));
        }
        range(column);
        if (!name.equals(column.name())) {
            text.append(", column: ").append(YamlText.scalar(column.name()));
        }
        text.append("}  # ").append(Figures.words(column.kind()));
        if (!Double.isNaN(column.least())) {
            text.append(still ? ", always " : ", from ").append(Figures.value(column.least()));
            text.append(still ? "" : " to " + Figures.value(column.greatest()));
        }
        text.append('\n');
    }

    private void range(ColumnSummary column) {
        if (column.wraps()) {
            double finest = Math.max(column.smallestStep(), 360 / TWO_BYTES);
            BigDecimal step = NiceFigures.atMost(Math.min(5, finest));
            text.append(column.least() < 0 ? ", range: -180..180" : ", range: 0..360");
            resolution(step);
            text.append(", wraps: yes");
            return;
        }
        double least = Double.isNaN(column.least()) ? 0 : Math.max(-FARTHEST, column.least());
        double greatest = Double.isNaN(column.greatest()) ? 1 : Math.min(FARTHEST, column.greatest());
        if (least == greatest) {
            least = Math.min(0, least);
            greatest = greatest == 0 ? 1 : Math.max(0, greatest);
        }
        BigDecimal part = NiceFigures.atLeast(Math.max(FINEST, (greatest - least) / PARTS));
        if (column.kind() == Kind.SWITCH) {
            part = BigDecimal.ONE;
        }
        BigDecimal low = toWhole(least, part, RoundingMode.FLOOR);
        BigDecimal high = toWhole(greatest, part, RoundingMode.CEILING);
        text.append(", range: ").append(plain(low)).append("..").append(plain(high));
        resolution(step(column, low, high));
    }

    private static BigDecimal step(ColumnSummary column, BigDecimal low, BigDecimal high) {
        double range = high.subtract(low).doubleValue();
        double farthest = low.abs().max(high.abs()).doubleValue();
        double finest = Math.max(FINEST, Math.max(range / TWO_BYTES, farthest / LARGEST_STEP));
        BigDecimal step = column.smallestStep() == 0
                ? NiceFigures.atMost(Math.min(1, range))
                : NiceFigures.atMost(Math.min(column.smallestStep(), range));
        return step.doubleValue() > finest ? step : NiceFigures.atLeast(finest);
    }

    private void resolution(BigDecimal step) {
        if (step.compareTo(BigDecimal.ONE) != 0) {
            text.append(", resolution: ").append(plain(step));
        }
    }

    private static BigDecimal toWhole(double figure, BigDecimal part, RoundingMode way) {
        return new BigDecimal(figure).divide(part, 0, way).multiply(part);
    }

    private static String plain(BigDecimal figure) {
        return figure.signum() == 0 ? "0" : figure.stripTrailingZeros().toPlainString();
    }

    /** A name for a person, which no other signal has: the column's without its unit and what is no letter or digit. */
    private String name(String column) {
        String rest = ColumnUnit.of(column).map(ColumnUnit.InName::rest).orElse(column);
        String clean = rest.replaceAll("[^\\p{L}\\p{N}_.-]+", " ").strip();
        String base = clean.isEmpty() ? "signal" : clean;
        String name = base;
        for (int i = 2; !names.add(name); i++) {
            name = base + " " + i;
        }
        return name;
    }
}
