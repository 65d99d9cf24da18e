package dropline.scenarios.yardstick;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Three ways to simulate one bus, which have to come to the same figures. */
final class YardstickTest {
    private static final Path PIT = Path.of("reference/bus-with-state.yaml");
    private static final double AGREEMENT = 0.005;

    /** How much slower than the straight line the simulator may be before something must be wrong with it. */
    private static final double MOST_TIMES_SLOWER = 25;

    private static final int ROUNDS = 5;
    private static final long SECONDS = 600;

    @Test
    void theSimulatorAgreesWithAGeneralLibraryAndWithAStraightLine() {
        for (long seed : new long[] {1, 7}) {
            Result ours = new PublicSimulator(PIT, seed).run(600);
            Result library = new EventLibrary(seed).run(600);
            Result straight = new StraightLine(seed).run(600);

            assertTrue(ours.agrees(library, AGREEMENT), () -> ours + " " + library);
            assertTrue(ours.agrees(straight, AGREEMENT), () -> ours + " " + straight);
            assertEquals(library.latencyMeanNanos(), straight.latencyMeanNanos());
        }
    }

    @Test
    void aDifferenceOfOnePerCentIsTold() {
        Result one = new StraightLine(1).run(60);
        Result other = new Result(
                one.frames(), one.latencyMeanNanos(), one.latency99Nanos(), one.cycleMeanNanos() * (1 + 2 * AGREEMENT));

        assertFalse(one.agrees(other, AGREEMENT));
    }

    /** A ratio within one process, and a generous one: no time, so that a slow machine cannot fail it. */
    @Test
    void theSimulatorIsNotManyTimesSlowerThanAStraightLine() {
        Model ours = new PublicSimulator(PIT, 1);
        Model straight = new StraightLine(1);
        double least = Double.MAX_VALUE;
        for (int round = 0; round < ROUNDS; round++) {
            long before = System.nanoTime();
            ours.run(SECONDS);
            long between = System.nanoTime();
            straight.run(SECONDS);
            long after = System.nanoTime();
            least = Math.min(least, (double) (between - before) / (after - between));
        }

        System.out.printf(Locale.ROOT, "The simulator takes %.1f times as long as a straight line of code.%n", least);
        double found = least;
        assertTrue(found < MOST_TIMES_SLOWER, () -> "times as long: " + found);
    }
}
