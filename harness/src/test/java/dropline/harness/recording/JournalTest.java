package dropline.harness.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class JournalTest {
    private static final int STATES = 30;

    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @Test
    void statesComeBackAsTheyWereWrittenWithColumnsThatCameLater() throws IOException {
        Path file = write(journal(true));

        Read read = read(file);

        assertEquals(List.of("a", "b", "late"), read.columns);
        assertEquals(states(STATES), read.states);
        assertEquals(List.of(), read.losses);
    }

    @Test
    void aJournalConvertsToEveryForm() throws IOException {
        Path file = write(journal(true));
        for (String name : List.of("j.dlr", "j.csv", "j.csv.gz")) {
            Convert.run(RecordingFiles.of(file), folder.resolve(name), ReadOptions.strict(), (read, total) -> {});

            assertEquals(states(STATES), read(folder.resolve(name)).states, name);
        }
    }

    @Test
    void cutAnywhereItHoldsAllThatCameBeforeTheLastWholeBatchAndSaysSo() throws IOException {
        byte[] whole = journal(false);
        int most = 0;
        for (int length = JournalFormat.HEADER_LENGTH; length < whole.length; length++) {
            Read read = read(write(Arrays.copyOf(whole, length)));

            assertEquals(states(read.states.size()), read.states, "cut to " + length);
            assertTrue(read.states.size() >= most, "cut to " + length);
            assertEquals(1, read.losses.size(), "cut to " + length);
            most = read.states.size();
        }
        assertTrue(most >= STATES - 5, "states " + most);
    }

    @Test
    void anyByteChangedCostsNoMoreThanWhatComesAfterIt() throws IOException {
        byte[] whole = journal(true);
        for (int at = JournalFormat.HEADER_LENGTH; at < whole.length; at++) {
            byte[] changed = whole.clone();
            changed[at] ^= (byte) (1 << at % 8);

            Read read = read(write(changed));

            assertEquals(states(read.states.size()), read.states, "changed at " + at);
            assertEquals(1, read.losses.size(), "changed at " + at);
        }
    }

    @Test
    void aTornHeaderIsAProblem() throws IOException {
        byte[] whole = journal(true);

        assertThrows(
                RecordingException.class, () -> read(write(Arrays.copyOf(whole, JournalFormat.HEADER_LENGTH - 1))));
    }

    @Test
    void aFullDiskLeavesAJournalWithoutATornEnd() throws IOException {
        int whole = journal(true).length;
        for (int room = JournalFormat.HEADER_LENGTH; room < whole; room++) {
            LimitedDisk disk = new LimitedDisk(room);
            JournalWriter writer = new JournalWriter(disk);

            assertThrows(IOException.class, () -> fill(writer, true));
            assertThrows(IOException.class, writer::end, "it must not go on behind what is lost");

            Read read = read(write(disk.held()));
            assertEquals(writer.writtenStates(), read.states.size());
            assertEquals(states(read.states.size()), read.states, "room " + room);
            assertFalse(read.losses.toString().contains("torn"), read.losses::toString);
        }
    }

    @Test
    void nobodyElseCanRecordIntoAJournalThatGrows() throws IOException {
        Path file = folder.resolve("held.part");
        try (JournalFile held = JournalFile.create(file)) {
            held.force();
            assertTrue(JournalFile.isInUse(file));
            assertThrows(FileAlreadyExistsException.class, () -> JournalFile.create(file));
        }
        assertFalse(JournalFile.isInUse(file));
    }

    private byte[] journal(boolean ended) throws IOException {
        LimitedDisk disk = new LimitedDisk(1 << 20);
        fill(new JournalWriter(disk), ended);
        return disk.held();
    }

    private static void fill(JournalWriter writer, boolean ended) throws IOException {
        int[] columns = {writer.addColumn("a"), writer.addColumn("b"), 0};
        for (int i = 0; i < STATES; i++) {
            if (i == STATES / 2) {
                columns[2] = writer.addColumn("late");
            }
            int count = i < STATES / 2 ? 2 : 3;
            writer.state(i * 40_000_000L, count, columns, new double[] {i / 10.0, i * 0.1f, Math.sqrt(i)});
            if (i % 5 == 4) {
                writer.write();
            }
        }
        if (ended) {
            writer.end();
        }
    }

    private static List<String> states(int count) {
        List<String> states = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double late = i < STATES / 2 ? Double.NaN : Math.sqrt(i);
            states.add(i * 40_000_000L + " " + i / 10.0 + " " + (double) (i * 0.1f) + " " + late);
        }
        return states;
    }

    private Path write(byte[] bytes) throws IOException {
        return Files.write(folder.resolve("flight.dlr.part"), bytes);
    }

    private record Read(List<String> columns, List<String> states, List<String> losses) {}

    private static Read read(Path file) throws IOException {
        List<String> states = new ArrayList<>();
        RecordingBlock block = new RecordingBlock();
        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
            List<String> columns =
                    reader.columns().stream().map(RecordingColumn::name).toList();
            while (reader.read(block)) {
                for (int row = 0; row < block.rows(); row++) {
                    StringBuilder state = new StringBuilder().append(block.rowNanos(row));
                    for (int column = 0; column < 3; column++) {
                        double value = column < columns.size() ? block.value(row, column) : Double.NaN;
                        state.append(' ').append(value);
                    }
                    states.add(state.toString());
                }
            }
            return new Read(columns, states, reader.losses());
        }
    }
}
