package dropline.bus.run;

import static dropline.bus.Pits.MILLI;
import static dropline.bus.run.OneIndicator.END;
import static dropline.bus.run.OneIndicator.at;
import static dropline.bus.run.OneIndicator.changes;
import static dropline.bus.run.OneIndicator.fault;
import static dropline.bus.run.OneIndicator.indicator;
import static dropline.bus.run.OneIndicator.needle;
import static dropline.bus.run.OneIndicator.pit;
import static dropline.bus.run.OneIndicator.way;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceLines;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the eye sees of needles and servos that are off; the needle turns 1000 units a second. */
final class NeedleFaultsTest {
    private final OneIndicator seen = new OneIndicator();

    @Test
    void lostZeroIsAConstantOffsetFromTheStart() {
        seen.run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.LOST_ZERO, 0, END, 0, 7), 100, 300, 50);

        assertEquals(List.of("7 107", "107 307", "307 57"), seen.ways());
        assertEquals(3, seen.lines.only("shown").size());
    }

    @Test
    void zeroLostInAMotionShiftsItAndIsFoundAgainAtTheEndOfTheSpan() {
        seen.run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.LOST_ZERO, 50 * MILLI, 1500 * MILLI, 0, 7), 100, 300);

        List<String> moved = seen.lines.only("moved");
        long start = at(moved.get(0));
        assertEquals(start + " moved 0 0 " + (start + 100 * MILLI) + " 100", moved.get(0));
        long standing = Math.round((50 * MILLI - start) / 1e6);
        assertEquals("50000000 moved 0 " + (standing + 7) + " " + (start + 100 * MILLI) + " 107", moved.get(1));
        assertEquals("107 307", way(moved.get(2)));
        assertEquals("1500000000 moved 0 307 1500000000 300", moved.get(3));
    }

    @Test
    void needleThatSlipsOnceIsOffByAConstantFromThenOn() {
        seen.run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.NEEDLE_SLIPPED, 500 * MILLI, END, 0, -20), 100, 300, 50);

        assertEquals(List.of("0 100", "100 80", "80 280", "280 30"), seen.ways());
        assertEquals(
                "500000000 moved 0 100 500000000 80", seen.lines.only("moved").get(1));
    }

    @Test
    void needleThatSlipsAgainAndAgainGoesFurtherOffEachTime() {
        seen.run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.NEEDLE_SLIPPED, 0, END, 2, 10), 100, 100, 100, 100, 100);

        List<String> slips = seen.lines.only("moved").stream()
                .filter(line -> at(line) == Long.parseLong(line.split(" ")[4]))
                .filter(line -> !line.split(" ")[3].equals(line.split(" ")[5]))
                .toList();
        assertTrue(slips.size() > 1, "two slips a second in five seconds: " + slips);
        String last = seen.lines.only("moved").get(seen.lines.only("moved").size() - 1);
        assertEquals(100 + 10L * slips.size(), Long.parseLong(last.split(" ")[5]));
    }

    @Test
    void lostStepsAddUpMoveAfterMove() {
        seen.run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.LOST_STEPS, 0, END, 1, 3), 100, 200, 300, 301);

        assertEquals(List.of("0 97", "97 194", "194 291", "291 291"), seen.ways());
        assertEquals(4, seen.lines.only("shown").size(), "the node believes every command to be carried out");
    }

    @Test
    void aMoveLosesStepsOnlyWithItsChanceAndInItsSpan() {
        seen.run(
                Indicator.Kind.GAUGE_STEPPER,
                fault(FaultKind.LOST_STEPS, 1500 * MILLI, 2500 * MILLI, 1, 3),
                100,
                200,
                300,
                400);

        assertEquals(List.of("0 100", "100 200", "200 297", "297 397"), seen.ways());
    }

    @Test
    void stickingNeedleStopsShortFromWhicheverSideItComes() {
        seen.run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.STICKING_NEEDLE, 0, END, 0, 5), 100, 200, 100, 97, 500);

        assertEquals(List.of("0 95", "95 195", "195 105", "105 102", "102 495"), seen.ways());
    }

    @Test
    void stickingNeedleDoesNotFollowASmallTurnBack() {
        seen.run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.STICKING_NEEDLE, 0, END, 0, 5), 100, 92);

        assertEquals(List.of("0 95", "95 95"), seen.ways());
    }

    @Test
    void headingNeedleThatIsOffStillTakesTheShortWayRound() {
        Pit pit = pit(needle(Indicator.Kind.GAUGE_STEPPER), true);
        seen.run(pit, fault(FaultKind.LOST_ZERO, 0, END, 0, 7), 900, 100);

        assertEquals(List.of("7 -93", "-93 107"), seen.ways());
    }

    @Test
    void servoWithAFaultMovesWithItsFramesAsBefore() {
        TraceLines healthy = new TraceLines();
        SegmentRun run = new SegmentRun(pit(needle(Indicator.Kind.SERVO), false), 0, 1, List.of(), healthy);
        run.offer(changes(100, 300));
        run.advanceTo(3000 * MILLI);

        seen.run(Indicator.Kind.SERVO, fault(FaultKind.LOST_STEPS, 500 * MILLI, END, 1, 3), 100, 300);

        assertEquals(healthy.only("shown"), seen.lines.only("shown"));
        assertEquals(List.of("0 100", "100 297"), seen.ways());
    }

    @Test
    void faultBeyondTheRunLeavesItsDigestAsItWas() {
        int[] values = {100, 300, 50, 1, 0};
        Fault reset = new Fault(FaultKind.RESET, 0, 0, -1, -1, 10_000 * MILLI, END, 0, MILLI);
        for (Indicator.Kind kind : Indicator.Kind.values()) {
            Fault part =
                    fault(kind.moves() ? FaultKind.LOST_ZERO : FaultKind.FROZEN_DISPLAY, 10_000 * MILLI, END, 0, 1);
            for (long everyNanos : List.of(1000 * MILLI, 17 * MILLI, 3 * MILLI)) {
                long healthy = digest(kind, List.of(), everyNanos, values);

                assertEquals(healthy, digest(kind, List.of(part), everyNanos, values), "kind=" + kind);
                assertEquals(healthy, digest(kind, List.of(reset), everyNanos, values), "kind=" + kind);
            }
        }
    }

    private static long digest(Indicator.Kind kind, List<Fault> faults, long everyNanos, int... values) {
        SegmentRun run = new SegmentRun(pit(indicator(kind), false), 0, 1, faults, new TraceLines());
        run.offer(changes(everyNanos, values));
        run.advanceTo(5000 * MILLI);
        run.end();
        return run.digest();
    }

    @Test
    void faultsOfNeedlesAreRefusedForWhatDoesNotMove() {
        for (Indicator.Kind kind : Indicator.Kind.values()) {
            for (FaultKind fault : List.of(
                    FaultKind.LOST_STEPS, FaultKind.LOST_ZERO, FaultKind.NEEDLE_SLIPPED, FaultKind.STICKING_NEEDLE)) {
                assertEquals(kind.moves(), fault.canStrike(kind));
                if (!kind.moves()) {
                    IllegalArgumentException refused = assertThrows(
                            IllegalArgumentException.class, () -> seen.run(kind, fault(fault, 0, END, 1, 5), 1));
                    assertEquals(
                            "a fault of needles strikes only what moves: kind=" + fault
                                    + " indicator=node panel/device is=" + kind,
                            refused.getMessage());
                }
            }
        }
    }

    @Test
    void needleThatIsOffByNothingIsRefused() {
        assertThrows(
                IllegalArgumentException.class,
                () -> seen.run(Indicator.Kind.SERVO, fault(FaultKind.LOST_STEPS, 0, END, 1, 0), 1));
    }
}
