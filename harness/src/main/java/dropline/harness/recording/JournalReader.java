package dropline.harness.recording;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** Reads a journal as any recording, once through for its columns and once for its states. */
final class JournalReader implements RecordingReader {
    private final JournalRecords records;
    private final List<RecordingColumn> columns;
    private final double[] known;
    private @Nullable ByteCursor batch;
    private boolean firstOfBatch;
    private long lastNanos = Long.MIN_VALUE;
    private @Nullable String damage;
    private boolean over;

    private JournalReader(JournalRecords records, List<RecordingColumn> columns) {
        this.records = records;
        this.columns = List.copyOf(columns);
        this.known = new double[columns.size()];
        Arrays.fill(known, Double.NaN);
    }

    static JournalReader open(Path file) throws IOException {
        List<RecordingColumn> columns = new ArrayList<>();
        try (JournalRecords records = JournalRecords.open(file)) {
            Set<String> names = new LinkedHashSet<>();
            for (ByteCursor batch = records.next(); batch != null; batch = records.next()) {
                readNames(batch, names);
            }
            names.forEach(name -> columns.add(new RecordingColumn(name, RecordingColumn.AS_IS)));
        } catch (DamageException e) {
            throw RecordingProblems.one(
                    RecordingProblems.damagedHeader(file.toString(), String.valueOf(e.getMessage())));
        }
        return new JournalReader(JournalRecords.open(file), columns);
    }

    private static void readNames(ByteCursor batch, Set<String> names) throws DamageException {
        int count = batch.count("names", CompactFormat.MOST_COLUMNS - names.size());
        for (int i = 0; i < count; i++) {
            byte[] bytes = batch.take(batch.count("a name's bytes", batch.left()));
            if (!names.add(text(bytes))) {
                throw new DamageException("a name stands there twice: '" + text(bytes) + "'");
            }
        }
    }

    private static String text(byte[] bytes) throws DamageException {
        try {
            String name = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            if (name.isBlank()) {
                throw new DamageException("a name is blank");
            }
            return name;
        } catch (CharacterCodingException e) {
            throw new DamageException("a name is not UTF-8");
        }
    }

    @Override
    public boolean read(RecordingBlock block) throws IOException {
        int capacity = CompactFormat.rowsPerBlock(known.length);
        block.clear(known.length, capacity);
        int rows = 0;
        try {
            while (rows < capacity && toNextState()) {
                state();
                block.addRow(lastNanos, known);
                rows++;
            }
        } catch (DamageException e) {
            damage = e.getMessage();
            over = true;
        }
        return rows > 0;
    }

    /** Goes to the next batch that holds states, if need be. */
    private boolean toNextState() throws IOException, DamageException {
        while (!over && (batch == null || batch.left() == 0)) {
            batch = records.next();
            over = batch == null;
            firstOfBatch = true;
            if (batch != null) {
                readNames(batch, new LinkedHashSet<>());
            }
        }
        return !over;
    }

    private void state() throws DamageException {
        ByteCursor in = batch;
        if (in == null) {
            throw new AssertionError("a state needs a batch");
        }
        long time = in.signed() + (firstOfBatch ? 0 : lastNanos);
        if (time < lastNanos) {
            throw new DamageException("time runs backwards");
        }
        int changed = in.count("values", known.length);
        for (int i = 0; i < changed; i++) {
            int column = in.count("column", known.length - 1);
            known[column] = value(in);
        }
        firstOfBatch = false;
        lastNanos = time;
    }

    private static double value(ByteCursor in) throws DamageException {
        int form = in.u8();
        if (form <= Decimals.MOST) {
            return in.signed() / Decimals.power(form);
        }
        double value =
                switch (form) {
                    case JournalFormat.FLOAT -> Float.intBitsToFloat((int) in.little(4));
                    case JournalFormat.DOUBLE -> Double.longBitsToDouble(in.little(8));
                    default -> throw new DamageException("a value's form must be 0..17: " + form);
                };
        if (!Double.isFinite(value)) {
            throw new DamageException("a value is not finite");
        }
        return value;
    }

    @Override
    public List<RecordingColumn> columns() {
        return columns;
    }

    @Override
    public List<String> controls() {
        return List.of();
    }

    @Override
    public int namesLine() {
        return 0;
    }

    @Override
    public Optional<TimeUnit> timeUnit() {
        return Optional.empty();
    }

    @Override
    public long skippedRows() {
        return 0;
    }

    /** Known once all has been read. */
    @Override
    public List<String> losses() {
        if (!over || (records.ended() && records.bytesLeft() == 0 && damage == null)) {
            return List.of();
        }
        String until = lastNanos == Long.MIN_VALUE
                ? "holds nothing whole"
                : "is whole up to " + RecordingProblems.seconds(lastNanos);
        String rest = damage != null
                ? "; then it is damaged: " + damage
                : records.bytesLeft() > 0 ? "; the last " + records.bytesLeft() + " bytes are torn and left out" : "";
        return List.of("this recording was cut off, not ended; it " + until + rest);
    }

    @Override
    public long bytesRead() {
        return records.bytesRead();
    }

    @Override
    public long bytesTotal() {
        return records.fileLength();
    }

    @Override
    public void close() throws IOException {
        records.close();
    }
}
