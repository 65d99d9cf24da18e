package dropline.harness.record;

import dropline.harness.recording.Convert;
import dropline.harness.recording.JournalFile;
import dropline.harness.recording.JournalWriter;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingException;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.report.Figures;
import dropline.harness.stream.State;
import dropline.harness.stream.StreamReader;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.Consumer;

/**
 * The recording being made: a journal beside its place, which survives a crash, and a log. When it ends the journal is
 * turned into the form that the recording's name asks for.
 */
final class Take implements Closeable {
    private final Path out;
    private final Path part;
    private final JournalWriter journal;
    private final RecordingLog log;
    private int[] columnOfName = new int[64];
    private int[] columns = new int[64];
    private double[] values = new double[64];

    private Take(Path out, JournalWriter journal, RecordingLog log) {
        this.out = out;
        this.part = part(out);
        this.journal = journal;
        this.log = log;
        Arrays.fill(columnOfName, -1);
    }

    /** Where a recording grows. */
    static Path part(Path out) {
        return out.resolveSibling(out.getFileName() + ".part");
    }

    /**
     * Begins a recording; one that was cut off there before is recovered first.
     *
     * @throws RefusedException if there is a recording of this name, or one being made
     */
    static Take begin(Path out, Consumer<String> say) throws IOException, RefusedException {
        if (!Convert.canWrite(out)) {
            throw new RefusedException(
                    "a recording's name ends in .dlr, .csv, .long.csv or .jsonl, or that with .gz: " + out);
        }
        if (Files.exists(out)) {
            throw new RefusedException(
                    out + " is there already, and a flight cannot be flown again; give another name, or delete it");
        }
        Path part = part(out);
        if (Files.exists(part)) {
            recover(out, part, say);
        }
        return begin(out, fresh(out, part));
    }

    /** Begins a recording whose journal goes to a file of the caller's. */
    static Take begin(Path out, JournalFile file) throws IOException {
        try {
            return new Take(
                    out, new JournalWriter(file), new RecordingLog(out.resolveSibling(out.getFileName() + ".log")));
        } catch (IOException e) {
            file.close();
            throw e;
        }
    }

    private static JournalFile fresh(Path out, Path part) throws IOException, RefusedException {
        try {
            return JournalFile.create(part);
        } catch (FileAlreadyExistsException e) {
            throw new RefusedException("another recording to " + out + " has just begun");
        }
    }

    private static void recover(Path out, Path part, Consumer<String> say) throws IOException, RefusedException {
        if (JournalFile.isInUse(part)) {
            throw new RefusedException("another Dropline is recording to " + out + " at this moment");
        }
        Path to = recovered(out);
        String from = "an earlier recording to " + out + " was cut off; ";
        try {
            Convert.Result result = Convert.run(RecordingFiles.of(part), to, ReadOptions.strict(), (read, total) -> {});
            say.accept(from + "recovered " + Figures.plural(result.rows(), "state") + " of it to " + to);
            result.losses().forEach(loss -> say.accept(to + ": " + loss));
        } catch (RecordingException nothing) {
            say.accept(from + "it held nothing yet");
        }
        Files.delete(part);
    }

    /** A name beside it that nothing has yet. */
    private static Path recovered(Path out) {
        Path free = out.resolveSibling("recovered-" + out.getFileName());
        for (int i = 2; Files.exists(free); i++) {
            free = out.resolveSibling("recovered-" + i + "-" + out.getFileName());
        }
        return free;
    }

    void state(StreamReader names, State state, long atNanos) throws IOException {
        int count = state.count();
        if (columns.length < count) {
            columns = new int[count * 2];
            values = new double[count * 2];
        }
        for (int i = 0; i < count; i++) {
            columns[i] = column(names, state.name(i));
            values[i] = state.value(i);
        }
        journal.state(atNanos, count, columns, values);
    }

    private int column(StreamReader names, int name) {
        if (name >= columnOfName.length) {
            int known = columnOfName.length;
            columnOfName = Arrays.copyOf(columnOfName, Math.max(known * 2, name + 1));
            Arrays.fill(columnOfName, known, columnOfName.length, -1);
        }
        if (columnOfName[name] < 0) {
            columnOfName[name] = journal.addColumn(names.name(name));
        }
        return columnOfName[name];
    }

    /** Hands everything so far to the operating system. */
    void write() throws IOException {
        journal.write();
    }

    /** Hands everything so far to the disk. */
    void force() throws IOException {
        journal.force();
    }

    void log(long atNanos, String what) {
        log.line(atNanos, what);
    }

    /** Where the journal grows. */
    Path part() {
        return part;
    }

    /** States that are safe in the journal. */
    long safeStates() {
        return journal.writtenStates();
    }

    /** The time up to which states are safe in the journal, ns. */
    long safeNanos() {
        return journal.writtenNanos();
    }

    /** Puts the recording in its place; the journal goes. Without any state there is no recording. */
    void finish() throws IOException {
        journal.end();
        journal.close();
        if (journal.writtenStates() > 0) {
            Convert.run(RecordingFiles.of(part), out, ReadOptions.strict(), (read, total) -> {});
        }
        Files.delete(part);
    }

    /** Leaves the journal as it is. */
    @Override
    public void close() throws IOException {
        log.close();
        journal.close();
    }
}
