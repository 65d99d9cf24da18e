package dropline.bus.run;

import static dropline.bus.Pits.MICRO;
import static dropline.bus.Pits.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.Pits;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceLines;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What the eye sees of faulty indicators. A needle turns 1000 units a second; each change below is shown 198 us to 800
 * us after it was made.
 */
final class PartFaultsTest {
    private static final long END = Fault.TO_THE_END;

    private final TraceLines lines = new TraceLines();

    @Test
    void lostZeroIsAConstantOffsetFromTheStart() {
        run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.LOST_ZERO, 0, END, 0, 7), 100, 300, 50);

        assertEquals(List.of("7 107", "107 307", "307 57"), ways());
        assertEquals(3, lines.only("shown").size());
    }

    @Test
    void zeroLostInAMotionShiftsItAndIsFoundAgainAtTheEndOfTheSpan() {
        run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.LOST_ZERO, 50 * MILLI, 1500 * MILLI, 0, 7), 100, 300);

        List<String> moved = lines.only("moved");
        long start = at(moved.get(0));
        assertEquals(start + " moved 0 0 " + (start + 100 * MILLI) + " 100", moved.get(0));
        long standing = Math.round((50 * MILLI - start) / 1e6);
        assertEquals("50000000 moved 0 " + (standing + 7) + " " + (start + 100 * MILLI) + " 107", moved.get(1));
        assertEquals("107 307", way(moved.get(2)));
        assertEquals("1500000000 moved 0 307 1500000000 300", moved.get(3));
    }

    @Test
    void needleThatSlipsOnceIsOffByAConstantFromThenOn() {
        run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.NEEDLE_SLIPPED, 500 * MILLI, END, 0, -20), 100, 300, 50);

        assertEquals(List.of("0 100", "100 80", "80 280", "280 30"), ways());
        assertEquals("500000000 moved 0 100 500000000 80", lines.only("moved").get(1));
    }

    @Test
    void needleThatSlipsAgainAndAgainGoesFurtherOffEachTime() {
        run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.NEEDLE_SLIPPED, 0, END, 2, 10), 100, 100, 100, 100, 100);

        List<String> slips = lines.only("moved").stream()
                .filter(line -> at(line) == Long.parseLong(line.split(" ")[4]))
                .filter(line -> !line.split(" ")[3].equals(line.split(" ")[5]))
                .toList();
        assertTrue(slips.size() > 1, "two slips a second in five seconds: " + slips);
        String last = lines.only("moved").get(lines.only("moved").size() - 1);
        assertEquals(100 + 10L * slips.size(), Long.parseLong(last.split(" ")[5]));
    }

    @Test
    void lostStepsAddUpMoveAfterMove() {
        run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.LOST_STEPS, 0, END, 1, 3), 100, 200, 300, 301);

        assertEquals(List.of("0 97", "97 194", "194 291", "291 291"), ways());
        assertEquals(4, lines.only("shown").size(), "the node believes every command to be carried out");
    }

    @Test
    void aMoveLosesStepsOnlyWithItsChanceAndInItsSpan() {
        run(
                Indicator.Kind.GAUGE_STEPPER,
                fault(FaultKind.LOST_STEPS, 1500 * MILLI, 2500 * MILLI, 1, 3),
                100,
                200,
                300,
                400);

        assertEquals(List.of("0 100", "100 200", "200 297", "297 397"), ways());
    }

    @Test
    void stickingNeedleStopsShortFromWhicheverSideItComes() {
        run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.STICKING_NEEDLE, 0, END, 0, 5), 100, 200, 100, 97, 500);

        assertEquals(List.of("0 95", "95 195", "195 105", "105 102", "102 495"), ways());
    }

    @Test
    void stickingNeedleDoesNotFollowASmallTurnBack() {
        run(Indicator.Kind.GAUGE_STEPPER, fault(FaultKind.STICKING_NEEDLE, 0, END, 0, 5), 100, 92);

        assertEquals(List.of("0 95", "95 95"), ways());
    }

    @Test
    void headingNeedleThatIsOffStillTakesTheShortWayRound() {
        Pit pit = pit(needle(Indicator.Kind.GAUGE_STEPPER), true);
        run(pit, fault(FaultKind.LOST_ZERO, 0, END, 0, 7), 900, 100);

        assertEquals(List.of("7 -93", "-93 107"), ways());
    }

    @Test
    void servoWithAFaultMovesWithItsFramesAsBefore() {
        TraceLines healthy = new TraceLines();
        SegmentRun run = new SegmentRun(pit(needle(Indicator.Kind.SERVO), false), 0, 1, List.of(), healthy);
        run.offer(changes(100, 300));
        run.advanceTo(3000 * MILLI);

        run(Indicator.Kind.SERVO, fault(FaultKind.LOST_STEPS, 500 * MILLI, END, 1, 3), 100, 300);

        assertEquals(healthy.only("shown"), lines.only("shown"));
        assertEquals(List.of("0 100", "100 297"), ways());
    }

    @Test
    void faultBeyondTheRunLeavesItsDigestAsItWas() {
        for (Indicator.Kind kind : Indicator.Kind.values()) {
            SegmentRun healthy = new SegmentRun(pit(indicator(kind), false), 0, 1, List.of(), new TraceLines());
            healthy.offer(changes(100, 300, 50, 1, 0));
            healthy.advanceTo(5000 * MILLI);

            FaultKind fault = kind.moves() ? FaultKind.LOST_ZERO : FaultKind.FROZEN_DISPLAY;
            SegmentRun late = run(kind, fault(fault, 10_000 * MILLI, END, 0, 1), 100, 300, 50, 1, 0);

            assertEquals(healthy.digest(), late.digest(), "kind=" + kind);
        }
    }

    @Test
    void faultsOfNeedlesAreRefusedForWhatDoesNotMove() {
        for (Indicator.Kind kind : Indicator.Kind.values()) {
            for (FaultKind fault : List.of(
                    FaultKind.LOST_STEPS, FaultKind.LOST_ZERO, FaultKind.NEEDLE_SLIPPED, FaultKind.STICKING_NEEDLE)) {
                assertEquals(kind.moves(), fault.canStrike(kind));
                if (!kind.moves()) {
                    IllegalArgumentException refused = assertThrows(
                            IllegalArgumentException.class, () -> run(kind, fault(fault, 0, END, 1, 5), 1));
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
                () -> run(Indicator.Kind.SERVO, fault(FaultKind.LOST_STEPS, 0, END, 1, 0), 1));
    }

    @Test
    void frozenDisplayShowsItsLatestWithTheFirstRefreshAfterwards() {
        run(Indicator.Kind.DIGITS, fault(FaultKind.FROZEN_DISPLAY, 900 * MILLI, 2500 * MILLI, 0, 0), 1, 2, 3, 4);

        List<String> shown = lines.only("shown");
        assertEquals(List.of(" shown 0 1", " shown 0 3", " shown 0 4"), afterTime(shown));
        assertTrue(at(shown.get(1)) >= 2510 * MILLI && at(shown.get(1)) <= 2560 * MILLI, shown.get(1));
        assertEquals(4, lines.only("applied").size());
    }

    @Test
    void refreshThatEndsInTheFreezeOrBeganInItShowsNothing() {
        TraceLines healthy = new TraceLines();
        SegmentRun run = new SegmentRun(pit(indicator(Indicator.Kind.DIGITS), false), 0, 1, List.of(), healthy);
        run.offer(changes(1));
        run.advanceTo(1000 * MILLI);
        long shownAt = at(healthy.only("shown").get(0));

        run(Indicator.Kind.DIGITS, fault(FaultKind.FROZEN_DISPLAY, shownAt, shownAt + 1, 0, 0), 1);
        run(Indicator.Kind.DIGITS, fault(FaultKind.FROZEN_DISPLAY, 0, shownAt - 1, 0, 0), 1);
        run(Indicator.Kind.DIGITS, fault(FaultKind.FROZEN_DISPLAY, shownAt + 1, shownAt + 2, 0, 0), 1);

        assertEquals(
                List.of(
                        shownAt + 50 * MILLI + " shown 0 1",
                        shownAt + 50 * MILLI + " shown 0 1",
                        shownAt + " shown 0 1"),
                lines.only("shown"));
    }

    @Test
    void frozenToTheEndNothingIsEverShown() {
        for (Indicator.Kind kind : Indicator.Kind.values()) {
            run(kind, fault(FaultKind.FROZEN_DISPLAY, 0, END, 0, 0), 1, 2, 3);
        }

        assertEquals(List.of(), lines.only("shown", "moved"));
        assertEquals(3 * Indicator.Kind.values().length, lines.only("applied").size());
    }

    @Test
    void frozenNeedleMovesWhenItIsCommandedAgain() {
        run(
                Indicator.Kind.GAUGE_STEPPER,
                fault(FaultKind.FROZEN_DISPLAY, 900 * MILLI, 1500 * MILLI, 0, 0),
                100,
                200,
                300);

        assertEquals(List.of("0 100", "100 300"), ways());
        assertEquals(List.of(" shown 0 1", " shown 0 3"), afterTime(lines.only("shown")));
    }

    @Test
    void frozenLampIsSwitchedWhenItsValueIsSentAgainUnchanged() {
        Pit pit = Pits.pit(
                List.of(Pits.signal(0, false)),
                Pits.refreshing(StateDelivery.BROADCAST, MILLI, 0, 700 * MILLI),
                List.of(node(Pits.lamp(0))));
        run(pit, fault(FaultKind.FROZEN_DISPLAY, 0, 500 * MILLI, 0, 0), 1);

        List<String> shown = lines.only("shown");
        assertEquals(1, shown.size());
        assertTrue(at(shown.get(0)) >= 700 * MILLI, shown.get(0));
        assertEquals(1, lines.only("applied").size(), "the node had it all along");
    }

    @Test
    void frozenServoGoesOnWithItsFirstFrameAfterwards() {
        run(Indicator.Kind.SERVO, fault(FaultKind.FROZEN_DISPLAY, 900 * MILLI, 1500 * MILLI, 0, 0), 100, 200);

        List<String> shown = lines.only("shown");
        assertEquals(List.of("0 100", "100 200"), ways());
        assertTrue(at(shown.get(1)) >= 1500 * MILLI && at(shown.get(1)) < 1520 * MILLI, shown.get(1));
    }

    @Test
    void allOfAFrozenIndicatorsSlotsFreezeAndNoOther() {
        Indicator both =
                new Indicator("both", Indicator.Kind.LAMP, List.of(0, 1), 0, 0, 0, Indicator.Blocks.NOTHING, 0);
        Indicator other = Pits.lamp(1);
        Pit pit = Pits.pit(
                List.of(Pits.signal(0, false), Pits.signal(1, false)),
                Pits.controller(StateDelivery.BROADCAST, MILLI, 0),
                List.of(Pits.node("node", 1, Pits.profile(100 * MICRO), List.of(both, other), List.of())));
        SegmentRun run = new SegmentRun(pit, 0, 1, List.of(fault(FaultKind.FROZEN_DISPLAY, 0, END, 0, 0)), lines);
        StateBlock block = new StateBlock();
        block.addRow(10);
        block.addChange(0, 1);
        block.addChange(1, 1);
        run.offer(block);
        run.advanceTo(5 * MILLI);

        assertEquals(List.of(" shown 2 1"), afterTime(lines.only("shown")));
    }

    @Test
    void silentHostSendsTheLatestWithItsFirstStateAfterwards() {
        Fault silent = new Fault(FaultKind.SILENT_HOST, -1, -1, -1, -1, 900 * MILLI, 3000 * MILLI, 0, 0);
        run(pit(Pits.lamp(0), false), silent, 1, 2, 3, 4, 5);

        assertEquals(List.of("1000000 sent", "3001000000 sent", "4001000000 sent"), lines.only("sent"));
        assertEquals(
                List.of("1000000 queued -1 0 1", "3001000000 queued -1 0 4", "4001000000 queued -1 0 5"),
                lines.only("queued"));
        assertEquals(5, lines.only("changed").size());
        assertEquals(List.of(" shown 0 1", " shown 0 4", " shown 0 5"), afterTime(lines.only("shown")));
    }

    private SegmentRun run(Indicator.Kind kind, Fault fault, int... values) {
        return run(pit(indicator(kind), false), fault, values);
    }

    private SegmentRun run(Pit pit, Fault fault, int... values) {
        SegmentRun run = new SegmentRun(pit, 0, 1, List.of(fault), lines);
        run.offer(changes(values));
        run.advanceTo(values.length * 1000 * MILLI);
        return run;
    }

    /** One change a second, the first after 1 ms. */
    private static StateBlock changes(int... values) {
        StateBlock block = new StateBlock();
        for (int i = 0; i < values.length; i++) {
            block.addRow(i * 1000L * MILLI + MILLI);
            block.addChange(0, values[i]);
        }
        return block;
    }

    private static Fault fault(FaultKind kind, long from, long until, double rate, long amount) {
        return new Fault(kind, 0, 0, 0, -1, from, until, rate, amount);
    }

    private static Pit pit(Indicator indicator, boolean wraps) {
        return Pits.pit(
                List.of(Pits.signal(0, wraps)),
                Pits.controller(StateDelivery.BROADCAST, MILLI, 0),
                List.of(node(indicator)));
    }

    private static Node node(Indicator indicator) {
        return Pits.node("node", 1, Pits.profile(100 * MICRO), List.of(indicator), List.of());
    }

    private static Indicator indicator(Indicator.Kind kind) {
        if (kind.moves()) {
            return needle(kind);
        }
        long every = kind.refreshes() ? 50 * MILLI : 0;
        long takes = kind.refreshes() ? 10 * MILLI : 0;
        return new Indicator("device", kind, List.of(0), 0, every, takes, Indicator.Blocks.NOTHING, 0);
    }

    private static Indicator needle(Indicator.Kind kind) {
        long frame = kind == Indicator.Kind.SERVO ? 20 * MILLI : 0;
        return new Indicator("device", kind, List.of(0), 0, frame, 0, Indicator.Blocks.NOTHING, 1000);
    }

    /** From where to where each motion went. */
    private List<String> ways() {
        return lines.only("moved").stream().map(PartFaultsTest::way).toList();
    }

    private static String way(String moved) {
        String[] words = moved.split(" ");
        return words[3] + " " + words[5];
    }

    private static long at(String line) {
        return Long.parseLong(line.split(" ")[0]);
    }

    private static List<String> afterTime(List<String> lines) {
        List<String> cut = new ArrayList<>();
        lines.forEach(line -> cut.add(line.substring(line.indexOf(' '))));
        return cut;
    }
}
