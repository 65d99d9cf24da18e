package dropline.bus.indicator;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Moves under constant acceleration, against the closed forms of kinematics; distances in units, times in ns. */
final class PathTest {
    private static final double SECOND = 1e9;
    /** 200 units a second. */
    private static final double MOST = 200 / SECOND;
    /** 400 units a second squared. */
    private static final double GAIN = 400 / SECOND / SECOND;

    private final Path path = new Path();

    @Test
    void longMoveTakesItsDistanceAtFullSpeedAndOneRampMore() {
        path.ramped(0, 1000, 0, MOST, GAIN);

        assertEquals(SECOND * (1000 / 200.0 + 200 / 400.0), path.endNanos(), 2, "d/v + v/a");
    }

    @Test
    void shortMoveNeverReachesFullSpeed() {
        path.ramped(0, -64, 0, MOST, GAIN);

        assertEquals(SECOND * 2 * Math.sqrt(64 / 400.0), path.endNanos(), 2, "2 sqrt(d/a)");
        assertEquals(-32, path.along(0, -64, path.endNanos() / 2), "half way in half the time");
    }

    @Test
    void moveOfNothingIsOverAtOnce() {
        path.ramped(7, 0, 0, MOST, GAIN);

        assertEquals(7, path.endNanos());
        assertEquals(2, path.joints());
        assertEquals(0, path.turn());
    }

    @Test
    void moveTheOtherWayBrakesFirstAndTurnsWhereItHasStopped() {
        path.ramped(0, -100, MOST, MOST, GAIN);

        assertEquals(0.5 * SECOND, path.nanos(path.turn()), 1, "v/a");
        assertEquals(50, path.along(0, -100, path.nanos(path.turn())), "v^2 / 2a further on");
        assertEquals(SECOND * (0.5 + 150 / 200.0 + 0.5), path.endNanos(), 3);
    }

    @Test
    void whatIsTooFastToStopInTimeOvershootsAndComesBack() {
        path.ramped(0, 20, MOST, MOST, GAIN);

        assertEquals(0, path.turn(), "it goes the right way at first");
        assertEquals(SECOND * (0.5 + 2 * Math.sqrt(30 / 400.0)), path.endNanos(), 3);
        assertEquals(20, path.along(0, 20, path.endNanos()));
    }

    @Test
    void straightPiecesStayWithinA64thOfTheRampOfTheTrueParabola() {
        path.ramped(0, 1000, 0, MOST, GAIN);

        double bound = MOST * MOST / (128 * GAIN);
        assertEquals(50 / 64.0, bound, 1e-9, "the ramp is 50 units long");
        double worst = 0;
        for (long at = 0; at <= 500_000_000L; at += 1_000_003) {
            double trueWay = GAIN * at * at / 2;
            worst = Math.max(worst, Math.abs(path.along(0, 1000, at) - trueWay));
        }
        assertTrue(worst <= bound + 0.5, "off by " + worst + ", rounding included");
        assertTrue(worst > bound / 2, "a bound that is never nearly reached proves nothing: " + worst);
    }

    @Test
    void anyMoveEndsAtItsGoalWithoutAJumpInItsWay() {
        for (long seed = 0; seed < 5000; seed++) {
            Random random = new Random(seed);
            double gain = (1 + random.nextInt(3000)) / SECOND / SECOND;
            double most = (1 + random.nextInt(3000)) / SECOND;
            double present = most * (2 * random.nextDouble() - 1);
            long distance = random.nextLong(4000) - 2000;
            path.ramped(0, distance, present, most, gain);
            String which = "seed " + seed;
            assertEquals(distance, path.along(0, distance, path.endNanos()), which);
            for (int joint = 1; joint < path.joints(); joint++) {
                long takes = path.nanos(joint) - path.nanos(joint - 1);
                long went = path.along(0, distance, path.nanos(joint)) - path.along(0, distance, path.nanos(joint - 1));
                assertTrue(takes >= 0, which);
                assertTrue(Math.abs(went) <= most * takes + 2, which + " joint " + joint + " went " + went);
            }
        }
    }
}
