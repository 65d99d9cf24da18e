package dropline.harness.recording;

import java.io.Closeable;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;

/**
 * Writes down states as they arrive, so that a crash costs no more than what was not yet written: batches with a check
 * each, only ever added at the end. Columns may be added at any time. Not for use by several threads.
 */
public final class JournalWriter implements Closeable {
    private static final int FULL_BATCH = 1 << 16;

    private final JournalFile file;
    private final ByteSink names = new ByteSink();
    private final ByteSink states = new ByteSink();
    private final ByteSink record = new ByteSink();
    private final CRC32 check = new CRC32();
    private double[] known = new double[64];
    private int columns;
    private int newNames;
    private int batchStates;
    private long lastNanos;
    private long writtenStates;
    private long writtenNanos;
    private long length;
    private boolean broken;

    /** Begins a journal in an empty file. */
    public JournalWriter(JournalFile file) throws IOException {
        this.file = file;
        Arrays.fill(known, Double.NaN);
        for (int i = 0; i < JournalFormat.MAGIC_LENGTH; i++) {
            record.u8(JournalFormat.magic(i));
        }
        record.little(JournalFormat.VERSION, 2);
        append();
    }

    /** Adds a column; tells its number. */
    public int addColumn(String name) {
        if (columns == CompactFormat.MOST_COLUMNS) {
            throw new IllegalStateException("columns must be at most " + CompactFormat.MOST_COLUMNS);
        }
        byte[] text = name.getBytes(StandardCharsets.UTF_8);
        names.varint(text.length);
        names.append(text, text.length);
        newNames++;
        if (columns == known.length) {
            known = Arrays.copyOf(known, columns * 2);
            Arrays.fill(known, columns, known.length, Double.NaN);
        }
        return columns++;
    }

    /**
     * Adds a state.
     *
     * @param atNanos not before the last one
     * @param count how many columns have a value; all others stay as they were
     * @param columns their numbers
     * @param values their values, finite
     */
    public void state(long atNanos, int count, int[] columns, double[] values) throws IOException {
        if (batchStates > 0 && atNanos < lastNanos || atNanos < writtenNanos) {
            throw new IllegalArgumentException("time must not run backwards: atNanos=" + atNanos);
        }
        states.signed(atNanos - (batchStates == 0 ? 0 : lastNanos));
        lastNanos = atNanos;
        int changed = 0;
        for (int i = 0; i < count; i++) {
            changed += values[i] == known[columns[i]] ? 0 : 1;
        }
        states.varint(changed);
        for (int i = 0; i < count; i++) {
            if (values[i] != known[columns[i]]) {
                known[columns[i]] = values[i];
                states.varint(columns[i]);
                value(values[i]);
            }
        }
        batchStates++;
        if (states.length() >= FULL_BATCH) {
            write();
        }
    }

    private void value(double value) {
        int decimals = Decimals.needed(value, 0);
        if (decimals <= Decimals.MOST) {
            states.u8(decimals);
            states.signed(Decimals.scaled(value, decimals));
        } else if ((float) value == value) {
            states.u8(JournalFormat.FLOAT);
            states.little(Float.floatToIntBits((float) value), 4);
        } else {
            states.u8(JournalFormat.DOUBLE);
            states.little(Double.doubleToLongBits(value), 8);
        }
    }

    /** Hands what was added to the operating system; then it outlives this process. */
    public void write() throws IOException {
        if (newNames + batchStates == 0) {
            return;
        }
        beginRecord(JournalFormat.BATCH);
        record.varint(newNames);
        record.append(names.bytes(), names.length());
        record.append(states.bytes(), states.length());
        endRecord();
        names.clear();
        states.clear();
        newNames = 0;
        writtenStates += batchStates;
        writtenNanos = batchStates == 0 ? writtenNanos : lastNanos;
        batchStates = 0;
    }

    /** Hands what was added to the disk itself; then it outlives a loss of power. */
    public void force() throws IOException {
        write();
        file.force();
    }

    /** Marks the journal as whole. */
    public void end() throws IOException {
        write();
        beginRecord(JournalFormat.END);
        endRecord();
        file.force();
    }

    /** States that were written. */
    public long writtenStates() {
        return writtenStates;
    }

    /** The time of the last state that was written, ns. */
    public long writtenNanos() {
        return writtenNanos;
    }

    /** Closes the file; what was not written is lost. */
    @Override
    public void close() throws IOException {
        file.close();
    }

    private void beginRecord(int kind) {
        record.u8(kind);
        record.little(0, 4);
    }

    private void endRecord() throws IOException {
        int body = record.length() - JournalFormat.PREFIX;
        for (int i = 0; i < 4; i++) {
            record.bytes()[1 + i] = (byte) (body >>> (8 * i));
        }
        check.reset();
        check.update(record.bytes(), 0, record.length());
        record.little(check.getValue(), JournalFormat.CHECK_LENGTH);
        append();
    }

    /** Adds the record whole or, where that fails, not at all: nothing may follow a torn one. */
    private void append() throws IOException {
        if (broken) {
            throw new IOException("the journal has ended already, for want of room");
        }
        try {
            file.append(record.bytes(), record.length());
            length += record.length();
        } catch (IOException e) {
            broken = true;
            cutTornEnd(e);
            throw e;
        }
        record.clear();
    }

    private void cutTornEnd(IOException reason) {
        try {
            file.cutTo(length);
            file.force();
        } catch (IOException e) {
            // A reader finds a torn end by its check, so nothing is lost by leaving it.
            reason.addSuppressed(e);
        }
    }
}
