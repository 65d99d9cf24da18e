package dropline.harness.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Pit;
import dropline.harness.problem.Problem;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class PitFeedTest {
    private static final Pit PIT =
            PitExamples.pit(List.of(PitExamples.signal("alt", 10), PitExamples.heading()), "gear", "flaps");
    private static final String FLIGHT = """
            time,heading,unused,alt,control:flaps,control:gone
            100.000,359.4,1,1004,0,0
            100.040,359.6,2,1004,0,0
            100.080,1,3,1006,,
            100.090,,,,2,5
            100.120,1.2,4,1012,,
            100.160,2,5,1026,0,
            """;

    private final StateBlock block = new StateBlock();

    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @Test
    void theFirstRowHoldsAllThatIsKnownAndTheOthersOnlyWhatChangesInWholeUnits() throws IOException {
        try (PitFeed feed = open(0, PitFeed.TO_THE_END)) {
            boolean more = feed.fill(block, Long.MAX_VALUE);

            assertFalse(more);
            assertEquals("""
                    0: 0=100 1=359
                    40: 1=0
                    80: 0=101 1=1
                    120:
                    160: 0=103 1=2
                    90! 1=2
                    160! 1=0
                    """, PitExamples.text(block));
            assertEquals(1, feed.unusedColumns());
            assertEquals(1, feed.unusedControls());
            assertEquals(160_000_000, feed.reachedNanos());
        }
    }

    @Test
    void stretchesFollowOneAnotherWithoutGapOrOverlap() throws IOException {
        try (PitFeed feed = open(0, PitFeed.TO_THE_END)) {
            assertTrue(feed.fill(block, 0));
            assertEquals("", PitExamples.text(block));
            assertTrue(feed.fill(block, 80_000_000));
            assertEquals("0: 0=100 1=359\n40: 1=0\n", PitExamples.text(block));
            assertTrue(feed.fill(block, 80_000_001));
            assertEquals("80: 0=101 1=1\n", PitExamples.text(block));
            assertTrue(feed.fill(block, 100_000_000));
            assertEquals("90! 1=2\n", PitExamples.text(block));
            assertFalse(feed.fill(block, Long.MAX_VALUE));
            assertEquals("120:\n160: 0=103 1=2\n160! 1=0\n", PitExamples.text(block));
            assertFalse(feed.fill(block, Long.MAX_VALUE));
            assertEquals("", PitExamples.text(block));
        }
    }

    @Test
    void begunLaterTheFirstRowHoldsTheValuesOfThatInstantAndControlsStandWhereTheyStood() throws IOException {
        try (PitFeed feed = open(100_000_000, 160_000_000)) {
            assertFalse(feed.fill(block, Long.MAX_VALUE));

            assertEquals("0: 0=101 1=1\n20:\n0! 1=2\n", PitExamples.text(block));
        }
    }

    @Test
    void begunAtARowThatRowIsTheFirst() throws IOException {
        try (PitFeed feed = open(80_000_000, 121_000_000)) {
            assertFalse(feed.fill(block, 50_000_000));

            assertEquals("0: 0=101 1=1\n40:\n10! 1=2\n", PitExamples.text(block));
        }
    }

    @Test
    void beginningAfterTheEndIsAProblem() {
        RecordingException wrong = assertThrows(RecordingException.class, () -> open(161_000_000, 200_000_000));

        Problem problem = wrong.problems().get(0);
        assertEquals("BEGINS_AFTER_END", problem.code());
        assertEquals("a time up to 0.16 s, where the recording ends", problem.expected());
    }

    @Test
    void everyAbsentColumnIsAProblemWithTheNearestName() throws IOException {
        Pit pit = PitExamples.pit(List.of(PitExamples.signal("altt", 1), PitExamples.signal("fuel flow", 1)));
        Path file = RecordingExamples.csv(folder, FLIGHT);

        RecordingException wrong =
                assertThrows(RecordingException.class, () -> PitFeed.open(file, pit, ReadOptions.skippingBadRows()));

        assertEquals(2, wrong.problems().size());
        assertEquals("UNKNOWN_COLUMN", wrong.problems().get(0).code());
        assertEquals("altt", wrong.problems().get(0).key());
        assertEquals(
                "did you mean alt? Set column: alt at the signal in the pit file",
                wrong.problems().get(0).fix());
        assertEquals("fuel flow", wrong.problems().get(1).key());
    }

    @Test
    void aRecordingMayEndInAMove() throws IOException {
        Path file = RecordingExamples.csv(folder, FLIGHT + "100.200,,,,1,\n");

        try (PitFeed feed = PitFeed.open(file, PIT, ReadOptions.strict())) {
            feed.fill(block, Long.MAX_VALUE);

            assertEquals(200_000_000, feed.reachedNanos());
        }
    }

    @Test
    void onlyAHeaderIsNoRecording() throws IOException {
        Path file = RecordingExamples.csv(folder, "time,heading,alt\n");

        RecordingException wrong =
                assertThrows(RecordingException.class, () -> PitFeed.open(file, PIT, ReadOptions.strict()));

        assertEquals("NO_ROWS", wrong.problems().get(0).code());
    }

    @Test
    void bothFormsFeedTheSameWhateverTheStretches() throws IOException {
        Random random = new Random(5);
        StringBuilder table = new StringBuilder("time_ms,heading,alt,control:gear\n");
        int gear = 0;
        for (int i = 0; i < 2000; i++) {
            gear = random.nextInt(30) == 0 ? 1 - gear : gear;
            table.append(i * 40).append(',').append(i % 720 / 2.0).append(',').append(random.nextInt(900));
            table.append(',').append(gear).append('\n');
        }
        Path csv = RecordingExamples.csv(folder, table.toString());
        Path compact = folder.resolve("flight.dlr");
        RecordingExamples.copy(csv, compact);

        String expected = fed(csv, Long.MAX_VALUE);
        for (long stretch : new long[] {39_000_000, 40_000_000, 999_999_999, 20_480_000_000L, Long.MAX_VALUE}) {
            assertEquals(expected, fed(compact, stretch), "stretch " + stretch);
        }
    }

    /** All rows, then all moves. */
    private String fed(Path file, long stretchNanos) throws IOException {
        StringBuilder rows = new StringBuilder();
        StringBuilder moves = new StringBuilder();
        try (PitFeed feed = PitFeed.open(file, PIT, ReadOptions.strict())) {
            boolean more = true;
            for (long until = stretchNanos; more; until += stretchNanos) {
                more = feed.fill(block, until);
                PitExamples.text(block)
                        .lines()
                        .forEach(line ->
                                (line.contains("!") ? moves : rows).append(line).append('\n'));
            }
        }
        return rows.append(moves).toString();
    }

    private PitFeed open(long fromNanos, long toNanos) throws IOException {
        Path file = RecordingExamples.csv(folder, FLIGHT);
        return PitFeed.open(RecordingFiles.of(file), PIT, ReadOptions.strict(), fromNanos, toNanos);
    }
}
