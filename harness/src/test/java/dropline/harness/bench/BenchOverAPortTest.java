package dropline.harness.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Segment;
import dropline.bus.trace.TraceSink;
import dropline.harness.link.Link;
import dropline.harness.link.PtyPair;
import dropline.harness.link.SerialLink;
import dropline.harness.link.SerialPlan;
import dropline.harness.live.StandIn;
import dropline.harness.recording.Moves;
import dropline.harness.verdict.Outcome;
import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Boards that are played at the far end of a port, examined as real ones are. */
@EnabledOnOs(OS.LINUX)
final class BenchOverAPortTest {
    /** A machine that builds something else meanwhile may take so long, ns. */
    private static final long FLOOR_NANOS = 60_000_000L;

    /** The board is played on the same machine: where that stalls for longer, the board is asked once more. */
    private static final int EXAMINATIONS = 3;

    @TempDir
    private Path folder;

    @BeforeAll
    static void socatMustBeThere() {
        PtyPair.mustBePossible();
    }

    /** A pseudo-terminal keeps no parity, so the port is opened without. */
    private static Link open(Path port, Segment segment) throws IOException {
        return SerialLink.open(new SerialPlan(port.toString(), segment.baud(), CharacterFormat.EIGHT_N_ONE, true));
    }

    private static void play(StandIn board, AtomicBoolean stop) {
        try {
            board.play(stop::get);
        } catch (IOException gone) {
            throw new AssertionError(gone);
        }
    }

    /** Most of an examination is waiting, so three go on at once. */
    @Test
    @Timeout(240)
    void whatAByteLinkCanDecideIsDecided() throws Exception {
        List<Callable<BenchResult>> boards = new ArrayList<>();
        for (long seed : new long[] {1, 4, 9}) {
            boards.add(() -> examinedUntilNothingStalled(seed));
        }
        ExecutorService threads = Executors.newFixedThreadPool(boards.size());
        try {
            for (Future<BenchResult> done : threads.invokeAll(boards)) {
                check(done.get());
            }
        } finally {
            threads.shutdownNow();
        }
    }

    private BenchResult examinedUntilNothingStalled(long seed) throws Exception {
        BenchResult result = examine(seed);
        for (int again = 1; again < EXAMINATIONS && hasFailed(result); again++) {
            result = examine(seed);
        }
        return result;
    }

    private BenchResult examine(long seed) throws Exception {
        ModelledBoard board = new ModelledBoard(seed);
        Segment segment = board.subject.on();
        AtomicBoolean stop = new AtomicBoolean();
        try (PtyPair pair = new PtyPair(folder, "board" + seed);
                Link far = open(pair.far(), segment);
                Link near = open(pair.near(), segment)) {
            StandIn played = new StandIn(
                    board.subject.pit(),
                    0,
                    seed,
                    Loops.othersDead(board.subject),
                    Moves.none(),
                    new TraceSink() {},
                    far);
            Thread thread = new Thread(() -> play(played, stop), "board");
            thread.start();

            BenchResult result =
                    new Examination(board.subject, near, FLOOR_NANOS, Thoroughness.QUICK, null, null).run(share -> {});
            stop.set(true);
            thread.join();

            return result;
        }
    }

    private static void check(BenchResult result) {
        String note = BenchText.of(result);
        assertFalse(hasFailed(result), note);
        assertEquals(Outcome.PASS, outcome(result, "answers"), note);
        assertEquals(Outcome.PASS, outcome(result, "silent-to-others"), note);
        assertEquals(Outcome.PASS, outcome(result, "soak"), note);
        // tighter than the floor, so never passed
        assertEquals(Outcome.UNDECIDED, outcome(result, "not-too-soon"), note);
        assertEquals(Outcome.UNDECIDED, outcome(result, "lets-go"), note);
        assertTrue(result.passport().releaseTailNanos().isEmpty(), note);
        assertEquals(
                List.of(),
                result.items().stream()
                        .flatMap(item -> item.suspects().stream())
                        .toList());
    }

    private static boolean hasFailed(BenchResult result) {
        return result.items().stream().anyMatch(item -> item.outcome() == Outcome.FAIL);
    }

    private static Outcome outcome(BenchResult result, String item) {
        return result.items().stream()
                .filter(each -> each.name().equals(item))
                .findFirst()
                .orElseThrow()
                .outcome();
    }
}
