package dropline.harness.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class ConvertTest {
    private static final String TABLE =
            """
            time_s,altitude,"gear, left",late,control:landing lights
            -0.5,1204.25,0,,
            0,1204.125,1,,
            0.01,,,,1
            0.04,1e-7,0,0.30000000000000004,
            0.04,123456789012345680000,0,-7,
            0.123456789,0.1,0,-7,
            0.2,,,,-3
            """.replace("1e-7", "0.0000001").replace("123456789012345680000", "1.2345678901234568E20");

    private static final List<String> ENDINGS = List.of(".dlr", ".csv", ".long.csv", ".jsonl");

    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "there.dlr",
                "there.dlr.gz",
                "there.csv",
                "there.csv.gz",
                "there.long.csv",
                "there.long.csv.gz",
                "there.jsonl",
                "there.jsonl.gz"
            })
    void thereAndBackIsTheSameTable(String there) throws IOException {
        Path table = RecordingExamples.csv(folder, TABLE);
        Path back = folder.resolve("back.csv");

        RecordingExamples.copy(table, folder.resolve(there));
        RecordingExamples.copy(folder.resolve(there), back);

        assertEquals(TABLE, Files.readString(back));
    }

    @Test
    void everyFormThroughEveryOtherAndBackIsTheSameFile() throws IOException {
        Path table = RecordingExamples.csv(folder, TABLE);
        for (String form : ENDINGS) {
            Path first = folder.resolve("first" + form);
            RecordingExamples.copy(table, first);
            for (String other : ENDINGS) {
                Path between = folder.resolve("between" + other);
                Path second = folder.resolve("second" + form);

                RecordingExamples.copy(first, between);
                RecordingExamples.copy(between, second);

                assertArrayEquals(Files.readAllBytes(first), Files.readAllBytes(second), form + " through " + other);
            }
        }
    }

    @Test
    void flightsDrawnAtRandomComeBackFromEveryFormValueByValueAndMoveByMove() throws IOException {
        for (long seed = 1; seed <= 12; seed++) {
            Path flight = RecordingExamples.random(folder, seed);
            List<String> expected = RecordingExamples.rowsThenMoves(flight);
            for (String form : ENDINGS) {
                Path there = folder.resolve("there" + form);
                RecordingExamples.copy(flight, there);
                assertEquals(expected, RecordingExamples.rowsThenMoves(there), "seed " + seed + " as " + form);
            }
        }
    }

    @Test
    void namesThatEveryFormTakesForSomethingElseComeBack() throws IOException {
        Path table = RecordingExamples.csv(folder, """
                seconds,signal,value,time_s,"a ""b"", c",a.b,control:signal
                0,1,2,3,4,5,
                1,,,,,,-1
                2,2,2,,,,
                """);

        for (String form : ENDINGS) {
            Path there = folder.resolve("there" + form);
            Path back = folder.resolve("back.csv");
            RecordingExamples.copy(table, there);
            RecordingExamples.copy(there, back);
            assertEquals(RecordingExamples.lines(table), RecordingExamples.lines(back), form);
            assertEquals(names(table), names(back), form);
        }
    }

    private static List<String> names(Path file) throws IOException {
        try (RecordingReader reader = RecordingReader.open(file, ReadOptions.strict())) {
            return reader.columns().stream().map(RecordingColumn::name).toList();
        }
    }

    @Test
    void rowsMovesAndBadRowsAreCountedAndProgressReachesTheEnd() throws IOException {
        Path table = RecordingExamples.csv(folder, "time,a,control:b\n0,1,\n1,x,\n2,,1\n");
        List<Long> read = new ArrayList<>();

        Convert.Result result = Convert.run(
                RecordingFiles.of(table),
                folder.resolve("out.dlr"),
                ReadOptions.skippingBadRows(),
                (done, total) -> read.add(total - done));

        assertEquals(new Convert.Result(1, 1, 1, List.of()), result);
        assertEquals(0L, read.get(read.size() - 1));
    }

    @Test
    void inputAndOutputMayNotBeOneFile() throws IOException {
        Path table = RecordingExamples.csv(folder, TABLE);
        Path alias = folder.resolve(".").resolve(table.getFileName());

        RecordingException wrong = assertThrows(RecordingException.class, () -> RecordingExamples.copy(table, alias));

        assertEquals("SAME_FILE", wrong.problems().get(0).code());
        assertEquals(TABLE, Files.readString(table));
    }

    @Test
    void aBadInputLeavesTheOutputAsItWas() throws IOException {
        Path table = RecordingExamples.csv(folder, "time,a\n0,1\n1,x\n");
        Path out = Files.writeString(folder.resolve("out.csv"), "precious");

        RecordingException wrong = assertThrows(RecordingException.class, () -> RecordingExamples.copy(table, out));

        assertEquals("NOT_A_NUMBER", wrong.problems().get(0).code());
        assertEquals("precious", Files.readString(out));
    }

    @Test
    void onlyAHeaderIsNoRecording() throws IOException {
        Path table = RecordingExamples.csv(folder, "time,a\n");

        RecordingException wrong =
                assertThrows(RecordingException.class, () -> RecordingExamples.copy(table, folder.resolve("out.dlr")));

        assertEquals("NO_ROWS", wrong.problems().get(0).code());
    }

    @Test
    void anUnknownEndingIsRefusedBeforeAnythingIsRead() {
        RecordingException wrong = assertThrows(
                RecordingException.class,
                () -> RecordingExamples.copy(folder.resolve("none.csv"), folder.resolve("out.txt")));

        assertTrue(wrong.problems().get(0).text().contains("UNKNOWN_ENDING"));
    }
}
