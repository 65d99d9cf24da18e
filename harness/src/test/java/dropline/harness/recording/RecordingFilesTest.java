package dropline.harness.recording;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Pit;
import dropline.harness.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class RecordingFilesTest {
    private static final Pit PIT = PitExamples.pit(List.of(PitExamples.signal("alt", 10)), "gear", "flaps");

    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @Test
    void movesFromASecondFileAreTakenInByTheirTimes() throws IOException {
        RecordingFiles files = files(
                "time,alt,control:flaps\n100,1000,\n101,1010,2\n102,1020,\n",
                "time_ms,control,value\n100500,gear,1\n101500,gear,0\n103000,gear,1\n");
        StateBlock block = new StateBlock();

        try (PitFeed feed = PitFeed.open(files, PIT, ReadOptions.strict(), 0, PitFeed.TO_THE_END)) {
            feed.fill(block, Long.MAX_VALUE);
        }

        assertEquals(
                "0: 0=100\n1000: 0=101\n2000: 0=102\n500! 0=1\n1000! 1=2\n1500! 0=0\n3000! 0=1\n",
                PitExamples.text(block));
    }

    @Test
    void convertedTogetherTheyAreWhatOneFileWouldHaveBeen() throws IOException {
        Random random = new Random(7);
        StringBuilder states = new StringBuilder("time_s,alt\n");
        StringBuilder moves = new StringBuilder("time_s,control,value\n");
        StringBuilder both = new StringBuilder("time_s,signal,value\n");
        for (int i = 0; i < 20_000; i++) {
            String time = Integer.toString(i / 2);
            if (random.nextInt(3) == 0) {
                moves.append(time).append(",gear,").append(i).append('\n');
                both.append(time).append(",control:gear,").append(i).append('\n');
            } else if (i % 2 == 0) {
                states.append(time).append(',').append(i).append('\n');
                both.append(time).append(",alt,").append(i).append('\n');
            }
        }
        Path one = Files.writeString(folder.resolve("both.long.csv"), both);
        Path merged = folder.resolve("merged.dlr");

        Convert.run(files(states.toString(), moves.toString()), merged, ReadOptions.strict(), (read, total) -> {});

        assertEquals(RecordingExamples.rowsThenMoves(one), RecordingExamples.rowsThenMoves(merged));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // states from 0 to 600 s; what the second file says of its times and where they lie
                "time_s|0|600|agree",
                "time_ms|0|600000|agree",
                "time_s|3|4|agree",
                "time|590|640|agree",
                "time_ms|0|600|UNITS_DISAGREE",
                "time|0|600000|UNITS_DISAGREE",
                "time_s|0|550000|UNITS_DISAGREE",
                "time_us|0|600|UNITS_DISAGREE",
                "time|700|800|TIMES_APART",
                "time|-20|-10|TIMES_APART",
                "time|1764075600|1764075700|TIMES_APART",
            })
    void twoFilesWhoseTimesCannotBelongTogetherAreRefused(String heading, long from, long to, String expected)
            throws IOException {
        RecordingFiles files =
                files("time_s,alt\n0,1\n600,2\n", heading + ",control,value\n" + from + ",gear,1\n" + to + ",gear,0\n");

        if (expected.equals("agree")) {
            assertDoesNotThrow(() -> files.mustAgree(ReadOptions.strict()));
        } else {
            RecordingException wrong =
                    assertThrows(RecordingException.class, () -> files.mustAgree(ReadOptions.strict()));
            assertEquals(expected, wrong.problems().get(0).code());
            assertTrue(wrong.problems().get(0).file().endsWith("moves.csv"));
        }
    }

    @Test
    void bothFilesAndWhatTheirTimesWereTakenForAreNamed() throws IOException {
        RecordingFiles files = files("time_s,alt\n0,1\n600,2\n", "time_ms,control,value\n0,gear,1\n590,gear,0\n");

        RecordingException wrong = assertThrows(RecordingException.class, () -> files.mustAgree(ReadOptions.strict()));

        Problem problem = wrong.problems().get(0);
        assertEquals("0 s to 0.59 s, its times taken for ms", problem.found());
        assertEquals(
                "about as long as " + files.states() + ": 0 s to 600 s, its times taken for s", problem.expected());
    }

    @Test
    void aFileOfMovesHoldsNothingElse() throws IOException {
        RecordingFiles files = files("time,alt\n0,1\n9,2\n", "time,signal,value\n0,gear,1\n9,gear,0\n");

        assertEquals(List.of("NOT_ONLY_CONTROLS 0:0 a signal: gear"), problems(files));
    }

    @Test
    void aControlIsMovedByOneFileOnly() throws IOException {
        RecordingFiles files = files("time,alt,control:gear\n0,1,0\n9,2,1\n", "time,control,value\n0,gear,1\n");

        assertEquals(List.of("DUPLICATE_NAME 0:0 moves of this control in both files"), problems(files));
    }

    @Test
    void everyControlThatThePitDoesNotHaveIsNamed() throws IOException {
        RecordingFiles files = files("time,alt\n0,1\n9,2\n", "time,control,value\n0,geer,1\n1,flaps,1\n2,horn,1\n");

        RecordingException wrong = assertThrows(
                RecordingException.class, () -> PitFeed.open(files, PIT, ReadOptions.strict(), 0, PitFeed.TO_THE_END));

        List<String> told = new ArrayList<>();
        wrong.problems().forEach(problem -> told.add(problem.code() + " " + problem.key() + " " + problem.fix()));
        assertEquals(
                List.of(
                        "UNKNOWN_CONTROL control:geer did you mean gear?",
                        "UNKNOWN_CONTROL control:horn name it as the pit file does, or leave its moves out"),
                told);
    }

    private List<String> problems(RecordingFiles files) {
        RecordingException wrong = assertThrows(
                RecordingException.class, () -> files.open(ReadOptions.strict()).close());
        return wrong.problems().stream().map(RecordingExamples::brief).toList();
    }

    private RecordingFiles files(String states, String moves) throws IOException {
        return new RecordingFiles(
                Files.writeString(folder.resolve("states.csv"), states),
                Files.writeString(folder.resolve("moves.csv"), moves));
    }
}
