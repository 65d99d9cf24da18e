package dropline.harness.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class CompactRecordingTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    private Path file = Path.of("");

    @BeforeEach
    void nameTheFile() {
        file = folder.resolve("flight.dlr");
    }

    @Test
    void theFirstBytesAreThoseOfTheDocument() throws IOException {
        try (RecordingWriter writer =
                RecordingWriter.create(file, List.of(new RecordingColumn("a", 2)), List.of("b"))) {
            writer.finish();
        }

        byte[] header = Arrays.copyOf(Files.readAllBytes(file), 21);

        byte[] expected = {
            (byte) 0xD1, 0x44, 0x4C, 0x52, 0x0D, 0x0A, 0x1A, 0x0A, 1, 0, 7, 0, 0, 0, 1, 1, 'a', 4, 1, 1, 'b'
        };
        assertEquals(Arrays.toString(expected), Arrays.toString(header));
    }

    @Test
    void everyFiniteDoubleComesBackExactly() throws IOException {
        double[] awkward = {
            0.1,
            -0.1,
            1e-15,
            1e15,
            9007199254740992.0,
            9007199254740993e3,
            Double.MIN_VALUE,
            Double.MAX_VALUE,
            Math.PI,
            1.0 / 3,
            123456.789,
            0.30000000000000004,
            -1e300,
            4.35,
            1.1e-16
        };
        List<String> expected = new ArrayList<>();
        try (RecordingWriter writer = RecordingWriter.create(file, columns(2), List.of())) {
            for (int i = 0; i < awkward.length; i++) {
                double plain = i / 8.0;
                writer.row(i, new double[] {awkward[i], plain});
                expected.add(i + " " + awkward[i] + " " + plain);
            }
            writer.finish();
        }

        assertEquals(expected, RecordingExamples.lines(file));
    }

    @Test
    void randomRecordingsComeBackExactly() throws IOException {
        for (long seed = 1; seed <= 12; seed++) {
            List<String> written = writeRandom(seed);

            List<String> read = RecordingExamples.lines(file);

            assertEquals(sorted(written), sorted(read), "seed " + seed);
        }
    }

    @Test
    void valuesAreRoundedToTheColumnsDecimals() throws IOException {
        List<RecordingColumn> columns = List.of(new RecordingColumn("coarse", 0), new RecordingColumn("fine", 3));
        try (RecordingWriter writer = RecordingWriter.create(file, columns, List.of())) {
            writer.row(0, new double[] {12.7, 1.23456});
            writer.row(5, new double[] {Double.NaN, -0.0004});
            writer.finish();
        }

        assertEquals(List.of("0 13.0 1.235", "5 13.0 0.0"), RecordingExamples.lines(file));
        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
            assertEquals(columns, reader.columns());
        }
    }

    @Test
    void tenMinutesOfASmoothFlightFitInThreeMegabytes() throws IOException {
        int columns = 120;
        double[] values = new double[columns];
        List<RecordingColumn> named = new ArrayList<>();
        for (int i = 0; i < columns; i++) {
            named.add(new RecordingColumn("c" + i, i % 4));
        }
        try (RecordingWriter writer = RecordingWriter.create(file, named, List.of())) {
            for (int row = 0; row < 15_000; row++) {
                double seconds = row * 0.04;
                for (int i = 0; i < columns; i++) {
                    values[i] = (10 + i * 20) * Math.sin(seconds * (0.01 + i * 0.004));
                }
                writer.row(row * 40_000_000L, values);
            }
            writer.finish();
        }

        assertTrue(Files.size(file) <= 3_000_000, "size: " + Files.size(file));
    }

    @Test
    void cutAnywhereItIsReadUpToItsLastWholeBlockAndTheLossIsSaid() throws IOException {
        writeSteady();
        byte[] bytes = Files.readAllBytes(file);
        List<String> all = RecordingExamples.lines(file);
        int headerLength = headerLength(bytes);

        int most = 0;
        for (int length = 1; length < bytes.length; length++) {
            Files.write(file, Arrays.copyOf(bytes, length));
            if (length < headerLength) {
                assertEquals(List.of("DAMAGED_HEADER"), codes(), "length " + length);
                continue;
            }
            try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
                List<String> read = RecordingExamples.lines(reader);
                assertEquals(all.subList(0, read.size()), read, "length " + length);
                assertEquals(1, reader.losses().size(), "length " + length);
                assertTrue(read.size() >= most, "length " + length);
                most = read.size();
            }
        }
        assertEquals(all.size(), most);
    }

    @Test
    void theLossOfACutNamesTimeAndBytes() throws IOException {
        try (RecordingWriter writer = RecordingWriter.create(file, columns(1), List.of())) {
            for (int row = 0; row < 600; row++) {
                writer.row(row * 40_000_000L, new double[] {row});
            }
            writer.finish();
        }
        byte[] bytes = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(bytes, bytes.length - 40));

        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
            assertEquals(512, RecordingExamples.lines(reader).size());
            String loss = reader.losses().get(0);
            assertTrue(loss.contains("whole up to 20.44 s") && loss.contains(" bytes, from byte "), loss);
        }
    }

    @Test
    void everyFlippedBitIsNoticed() throws IOException {
        writeSteady();
        byte[] bytes = Files.readAllBytes(file);
        for (int bit = 64; bit < bytes.length * 8; bit++) {
            byte[] flipped = bytes.clone();
            flipped[bit / 8] ^= (byte) (1 << bit % 8);
            Files.write(file, flipped);

            boolean noticed;
            try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
                RecordingExamples.lines(reader);
                noticed = !reader.losses().isEmpty();
            } catch (RecordingException e) {
                noticed = true;
            }

            assertTrue(noticed, "bit " + bit);
        }
    }

    @Test
    void readLenientlyADamagedBlockIsLeftOutAndTheNextIsRead() throws IOException {
        try (RecordingWriter writer = RecordingWriter.create(file, columns(1), List.of())) {
            for (int row = 0; row < 512 * 3; row++) {
                writer.row(row, new double[] {row * 1.5});
            }
            writer.finish();
        }
        byte[] bytes = Files.readAllBytes(file);
        int first = headerLength(bytes);
        int second = first + 9 + (bytes[first + 1] & 0xFF) + (bytes[first + 2] & 0xFF) * 256 + 4;
        bytes[second + 15] ^= 0x10;
        Files.write(file, bytes);

        assertEquals(List.of("DAMAGED_BLOCK"), codes());
        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.skippingBadRows())) {
            List<String> lines = RecordingExamples.lines(reader);
            assertEquals(1024, lines.size());
            assertEquals("1024 1536.0", lines.get(512));
            assertEquals(1, reader.losses().size());
            assertTrue(
                    reader.losses().get(0).startsWith("Block 2, at byte " + second),
                    reader.losses().get(0));
        }
    }

    @Test
    void aVersionFromTheFutureIsRefused() throws IOException {
        writeSteady();
        byte[] bytes = Files.readAllBytes(file);
        bytes[8] = 2;
        Files.write(file, bytes);

        assertEquals(List.of("UNKNOWN_VERSION 0:0 version 2"), RecordingExamples.problems(file));
    }

    @Test
    void anUnfinishedRecordingLeavesWhatWasThere() throws IOException {
        Files.writeString(file, "precious");
        try (RecordingWriter writer = RecordingWriter.create(file, columns(1), List.of())) {
            writer.row(0, new double[] {1});
        }

        assertEquals("precious", Files.readString(file));
        try (var left = Files.list(folder)) {
            assertEquals(List.of(file), left.toList());
        }
    }

    @Test
    void aWriterRefusesWhatNoReaderCouldUse() throws IOException {
        try (RecordingWriter writer = RecordingWriter.create(file, columns(1), List.of("gear"))) {
            writer.row(10, new double[] {1});
            assertThrows(IllegalArgumentException.class, () -> writer.row(9, new double[] {1}));
            assertThrows(IllegalArgumentException.class, () -> writer.move(9, "gear", 1));
            assertThrows(IllegalArgumentException.class, () -> writer.move(11, "flaps", 1));
            assertThrows(IllegalArgumentException.class, () -> writer.row(11, new double[] {1, 2}));
            assertThrows(IllegalArgumentException.class, () -> writer.row(11, new double[] {Double.POSITIVE_INFINITY}));
            writer.finish();
            assertThrows(IllegalStateException.class, () -> writer.row(12, new double[] {1}));
            assertThrows(IllegalStateException.class, writer::finish);
        }
        assertFalse(RecordingExamples.lines(file).isEmpty());
    }

    static List<RecordingColumn> columns(int count) {
        List<RecordingColumn> columns = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            columns.add(new RecordingColumn("column " + i, RecordingColumn.AS_IS));
        }
        return columns;
    }

    private List<String> codes() {
        RecordingException wrong = assertThrows(RecordingException.class, () -> RecordingExamples.lines(file));
        return wrong.problems().stream().map(problem -> problem.code()).toList();
    }

    private static int headerLength(byte[] bytes) {
        return 14 + (bytes[10] & 0xFF) + (bytes[11] & 0xFF) * 256 + 4;
    }

    private static List<String> sorted(List<String> lines) {
        return lines.stream().sorted().toList();
    }

    /** Three blocks of few bytes. */
    private void writeSteady() throws IOException {
        try (RecordingWriter writer = RecordingWriter.create(file, columns(2), List.of("gear"))) {
            for (int row = 0; row < 1100; row++) {
                writer.row(row * 40_000_000L, new double[] {1.25, row < 700 ? 1 : 2});
                if (row % 400 == 0) {
                    writer.move(row * 40_000_000L, "gear", row);
                }
            }
            writer.finish();
        }
    }

    /** Several blocks of steady, smooth, noisy and late columns, and moves; what went in, as lines. */
    private List<String> writeRandom(long seed) throws IOException {
        Random random = new Random(seed);
        List<String> lines = new ArrayList<>();
        int rows = 1 + random.nextInt(1300);
        try (RecordingWriter writer = RecordingWriter.create(file, columns(5), List.of("x", "y"))) {
            double[] values = {3.5, 0, 0, 0, Double.NaN};
            long nanos = random.nextInt(1000) - 500L;
            for (int row = 0; row < rows; row++) {
                values[1] = Math.rint(1000 * Math.sin(row * 0.01)) / 100;
                values[2] = random.nextInt(200) == 0 ? random.nextGaussian() : values[2];
                values[3] = random.nextInt(40) == 0 ? 1 - values[3] : values[3];
                values[4] = row > 700 ? row * 1e6 : values[4];
                writer.row(nanos, values);
                StringBuilder line = new StringBuilder().append(nanos);
                for (double value : values) {
                    line.append(' ').append(Double.isNaN(value) ? "-" : Double.toString(value + 0.0));
                }
                lines.add(line.toString());
                if (random.nextInt(50) == 0) {
                    int control = random.nextInt(2);
                    int value = random.nextInt();
                    writer.move(nanos, control == 0 ? "x" : "y", value);
                    lines.add(nanos + " ! " + control + " " + value);
                }
                nanos += random.nextInt(100) == 0 ? random.nextInt(1_000_000_000) : 40_000_000;
            }
            writer.finish();
        }
        return lines;
    }
}
