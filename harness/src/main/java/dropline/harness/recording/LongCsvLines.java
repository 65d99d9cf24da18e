package dropline.harness.recording;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** The lines of a long CSV: time, name and value in each. */
final class LongCsvLines implements NamedLines {
    private final SourceStream source;
    private final boolean lenient;
    private final TimeUnit unit;
    private final LineProblems problems;
    private final CloseableIterator<NamedLine> lines;
    private final List<String> losses = new ArrayList<>();
    private long lastLine = 1;
    /** Why the text behind the line handed out last cannot be taken apart; null as long as it can. */
    private @Nullable CsvParseException broken;

    private boolean ended;

    private LongCsvLines(
            SourceStream source,
            boolean lenient,
            TimeUnit unit,
            LineProblems problems,
            CloseableIterator<NamedLine> lines) {
        this.source = source;
        this.lenient = lenient;
        this.unit = unit;
        this.problems = problems;
        this.lines = lines;
    }

    static LongCsvLines open(SourceStream source, char separator, LongHeader header, ReadOptions options)
            throws IOException {
        TimeUnit told = options.timeUnit();
        TimeUnit unit = told != null ? told : header.unit() != null ? header.unit() : TimeUnit.SECONDS;
        LineProblems problems = new LineProblems(source.name());
        LongCsvFields fields = new LongCsvFields(header, TimeUnit.NANOSECONDS.convert(1, unit), problems);
        try {
            CloseableIterator<NamedLine> lines = CsvText.lines(source, separator, fields);
            lines.next();
            return new LongCsvLines(source, options.lenient(), unit, problems, lines);
        } catch (CsvParseException e) {
            throw RecordingProblems.one(problems.malformed(1, CsvText.reason(e)));
        } catch (UncheckedIOException e) {
            throw CsvText.cause(e);
        }
    }

    @Override
    public @Nullable NamedLine next() throws IOException {
        try {
            while (broken == null && lines.hasNext()) {
                NamedLine line = lines.next();
                lastLine = line.line;
                if (!isMore() && source.cut()) {
                    losses.add(RecordingProblems.cutLine(line.line));
                    return null;
                }
                if (!line.blank) {
                    return line;
                }
            }
        } catch (CsvParseException e) {
            broken = e;
        } catch (UncheckedIOException e) {
            throw CsvText.cause(e);
        }
        return broken == null || ended ? null : unreadable(CsvText.reason(broken));
    }

    private boolean isMore() {
        try {
            return lines.hasNext();
        } catch (CsvParseException e) {
            broken = e;
            return true;
        }
    }

    /** From here on nothing can be told apart. */
    private @Nullable NamedLine unreadable(String reason) {
        ended = true;
        if (lenient) {
            losses.add(RecordingProblems.noCsvFrom(lastLine + 1, reason));
            return null;
        }
        NamedLine line = new NamedLine();
        line.clear(lastLine + 1);
        line.problems.add(problems.malformed(line.line, reason));
        return line;
    }

    @Override
    public TimeUnit unit() {
        return unit;
    }

    @Override
    public List<String> losses() {
        return List.copyOf(losses);
    }
}
