package dropline.bus.control;

import static dropline.bus.Pits.MICRO;
import static dropline.bus.Pits.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.Pits;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Control;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.run.SegmentRun;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.TraceLines;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What nodes believe of faulty controls, and what the host is told. A poll takes 550 us. */
final class ControlFaultsTest {
    private static final long END = Fault.TO_THE_END;
    private static final Control TOGGLE = new Control("c", Control.Kind.TOGGLE, 0, 5 * MILLI, 0, 0);
    private static final Control BUTTON = new Control("c", Control.Kind.BUTTON, 0, 5 * MILLI, 0, 0);
    private static final Control ENCODER = new Control("c", Control.Kind.ENCODER, 0, 0, 0, 0);
    private static final Control AXIS = new Control("c", Control.Kind.AXIS, 0, 0, 0, 4);

    private final TraceLines lines = new TraceLines();
    private final EventOrder order = new EventOrder(lines, (rank, at, index, serial) -> true);

    @Test
    void skippedStepIsMovedButNotSampledAndTheNextOneReportsItsOwnSerial() {
        run(ENCODER, fault(FaultKind.ENCODER_SKIPS, 15 * MILLI, 25 * MILLI, 1), 1, 2, 3);

        assertEquals(
                List.of("10000000 control-moved 0 1 1", "20000000 control-moved 0 2 2", "30000000 control-moved 0 3 3"),
                lines.only("control-moved"));
        assertEquals(List.of("10000000 sampled 0 1", "30000000 sampled 0 3"), lines.only("sampled"));
        assertEquals(List.of(" told 0 1", " told 0 3"), afterTime(lines.only("told")));
    }

    @Test
    void countStaysBehindByWhatWasSkipped() {
        Controls controls = controls(ENCODER, fault(FaultKind.ENCODER_SKIPS, 15, 25, 1));

        controls.move(10, 0, 2);
        controls.move(20, 0, 5);
        controls.move(30, 0, 6);

        assertEquals(3, controls.value(0));
    }

    @Test
    void pressThatIsNotNoticedIsNeverCounted() {
        Controls controls = controls(BUTTON, fault(FaultKind.ENCODER_SKIPS, 15 * MILLI, 25 * MILLI, 1));

        for (long press = 1; press <= 3; press++) {
            controls.move(press * 10 * MILLI, 0, 1);
            controls.move(press * 10 * MILLI + 6 * MILLI, 0, 0);
        }
        order.release(Long.MAX_VALUE);

        assertEquals(3, controls.believed(0, 40 * MILLI));
        assertEquals(2, controls.value(0));
        assertEquals(List.of("15000000 sampled 0 1", "35000000 sampled 0 3"), lines.only("sampled"));
    }

    @Test
    void switchThatFlickersIsBelievedThereAndBackThoughNobodyMovedIt() {
        run(TOGGLE, fault(FaultKind.SWITCH_FLICKERS, 18 * MILLI, END, 0), 1);

        List<String> sampled = lines.only("sampled");
        assertEquals(1, lines.only("control-moved").size());
        assertEquals("15000000 sampled 0 1", sampled.get(0));
        assertEquals("18000000 sampled 0 2", sampled.get(1));
        assertTrue(sampled.get(2).endsWith(" sampled 0 3"));
        long back = at(sampled.get(2)) - 18 * MILLI;
        assertTrue(back >= 6 * MILLI && back <= 10 * MILLI, "debounce and 1 to 5 ms: " + back);
        assertEquals(List.of(" told 0 1", " told 0 2", " told 0 3"), afterTime(lines.only("told")));
    }

    @Test
    void laterMovesAreStillBelievedAndToldAmongManyFlickers() {
        run(TOGGLE, fault(FaultKind.SWITCH_FLICKERS, 0, 2000 * MILLI, 5), moves(200));

        int spurious =
                lines.only("sampled").size() - lines.only("control-moved").size();
        assertTrue(spurious >= 3, "some ten flickers in two seconds, half of them while a move is debounced");
        String lastMove = last(lines.only("control-moved"));
        assertTrue(lines.only("sampled").contains(2005 * MILLI + " sampled 0 " + lastMove.split(" ")[3]), lastMove);
        assertTrue(last(lines.only("told")).endsWith(" told 0 " + lastMove.split(" ")[3]), lastMove);
    }

    @Test
    void flickerWhileAMoveIsStillDebouncedIsNotNoticed() {
        run(TOGGLE, fault(FaultKind.SWITCH_FLICKERS, 12 * MILLI, END, 0), 1);

        assertEquals(List.of("15000000 sampled 0 1"), lines.only("sampled"));
    }

    @Test
    void moveThatFollowsAFlickerAtOnceTakesThePlaceOfItsWayBack() {
        run(TOGGLE, fault(FaultKind.SWITCH_FLICKERS, 9 * MILLI, END, 0), 1);

        assertEquals(List.of("9000000 sampled 0 1", "15000000 sampled 0 2"), lines.only("sampled"));
        assertEquals(List.of("10000000 control-moved 0 2 1"), lines.only("control-moved"));
    }

    @Test
    void buttonThatFlickersCountsAPressThatNobodyMade() {
        run(BUTTON, fault(FaultKind.SWITCH_FLICKERS, 50 * MILLI, END, 0), 1);

        assertEquals(List.of("15000000 sampled 0 1", "50000000 sampled 0 2"), lines.only("sampled"));
        assertEquals(List.of(" told 0 1", " told 0 2"), afterTime(lines.only("told")));
    }

    @Test
    void noisyAxisWandersBeyondItsDeadBandAndKeepsReportingRealMoves() {
        Controls controls = controls(AXIS, fault(FaultKind.NOISY_AXIS, 0, 1000 * MILLI, 100));
        controls.move(0, 0, 2000);
        int before = controls.value(0);
        int strikes = 0;
        while (controls.nextNanos() != Long.MAX_VALUE) {
            controls.step();
            strikes++;
            int now = controls.value(0);
            assertTrue(Math.abs(now - before) > 4, "a wander is reported only beyond the dead band");
            assertTrue(Math.abs(now - 2000) <= 10, "and stays near the truth: " + now);
            before = now;
        }
        controls.move(1000 * MILLI, 0, 2005);
        order.release(Long.MAX_VALUE);

        assertEquals(100, strikes, 40, "four standard deviations of a Poisson count");
        assertEquals(2005, controls.value(0));
        assertEquals(strikes + 2, lines.only("sampled").size());
        assertEquals(
                "1000000000 control-moved 0 " + (strikes + 2) + " 2005",
                lines.only("control-moved").get(1));
    }

    @Test
    void noisyAxisNeverReadsBelowZero() {
        Controls controls = controls(AXIS, fault(FaultKind.NOISY_AXIS, 0, 1000 * MILLI, 100));

        while (controls.nextNanos() != Long.MAX_VALUE) {
            controls.step();
            assertTrue(controls.value(0) >= 0);
        }
    }

    @Test
    void faultThatDoesNotSuitTheControlIsRefused() {
        int refused = 0;
        for (Control control : List.of(TOGGLE, BUTTON, ENCODER, AXIS)) {
            for (FaultKind kind : List.of(FaultKind.ENCODER_SKIPS, FaultKind.SWITCH_FLICKERS, FaultKind.NOISY_AXIS)) {
                if (!kind.canStrike(control.kind())) {
                    IllegalArgumentException why =
                            assertThrows(IllegalArgumentException.class, () -> run(control, fault(kind, 0, END, 1), 1));
                    assertEquals(
                            "a control's fault must suit what it is: kind=" + kind + " control=c is=" + control.kind(),
                            why.getMessage());
                    refused++;
                }
            }
        }
        assertEquals(7, refused);
    }

    private static int[] moves(int count) {
        int[] values = new int[count];
        for (int i = 0; i < count; i++) {
            values[i] = i % 2 == 0 ? 1 : 0;
        }
        return values;
    }

    /** One move every 10 ms, the first at 10 ms; runs 60 ms longer. */
    private void run(Control control, Fault fault, int... values) {
        SegmentRun run = new SegmentRun(pit(control), 0, 1, List.of(fault), lines);
        StateBlock block = new StateBlock();
        for (int i = 0; i < values.length; i++) {
            block.addMove((i + 1) * 10L * MILLI, 0, values[i]);
        }
        run.offer(block);
        run.advanceTo(values.length * 10L * MILLI + 60 * MILLI);
        run.end();
    }

    private Controls controls(Control control, Fault fault) {
        return new Controls(Layout.of(pit(control)), 0, 1, order, List.of(fault));
    }

    private static Fault fault(FaultKind kind, long from, long until, double rate) {
        return new Fault(kind, 0, 0, 0, -1, from, until, rate, 0);
    }

    private static Pit pit(Control control) {
        return Pits.pit(
                List.of(Pits.signal(0, false)),
                Pits.controller(StateDelivery.BROADCAST, MILLI, 0),
                List.of(Pits.node("node", 1, Pits.profile(100 * MICRO), List.of(Pits.lamp(0)), List.of(control))));
    }

    private static long at(String line) {
        return Long.parseLong(line.split(" ")[0]);
    }

    private static String last(List<String> lines) {
        return lines.get(lines.size() - 1);
    }

    private static List<String> afterTime(List<String> lines) {
        List<String> cut = new ArrayList<>();
        lines.forEach(line -> cut.add(line.substring(line.indexOf(' '))));
        return cut;
    }
}
