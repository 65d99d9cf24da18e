package dropline.bus.control;

import static dropline.bus.Pits.MICRO;
import static dropline.bus.Pits.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.Pits;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Control;
import dropline.bus.pit.Control.Detent;
import dropline.bus.pit.Control.Kind;
import dropline.bus.pit.Control.Matrix;
import dropline.bus.pit.Control.Positions;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.run.SegmentRun;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.TraceLines;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What nodes believe of controls of each kind; all are debounced for 5 ms, contacts do not bounce. */
final class ControlKindsTest {
    private static final long DEBOUNCE = 5 * MILLI;

    private final TraceLines lines = new TraceLines();
    private final EventOrder order = new EventOrder(lines, (rank, at, index, serial) -> true);

    private record Move(long millis, int value) {}

    @Test
    void selectorThatIsOpenForLessThanItsDebounceTimeIsBelievedOnceItHasClosed() {
        run(selector(3 * MILLI), new Move(10, 2));

        assertEquals(List.of("10000000 control-moved 0 1 2"), lines.only("control-moved"));
        assertEquals(List.of("18000000 sampled 0 1"), lines.only("sampled"), "3 ms open, 5 ms debounced");
    }

    @Test
    void selectorThatIsOpenForLongerIsBelievedToReadItsOpenValueFirst() {
        run(selector(20 * MILLI), new Move(10, 2));

        assertEquals(
                List.of("10000000 control-moved 0 1 15", "30000000 control-moved 0 2 2"), lines.only("control-moved"));
        assertEquals(List.of("15000000 sampled 0 1", "35000000 sampled 0 2"), lines.only("sampled"));
        assertEquals(2, lines.only("told").size());
    }

    @Test
    void selectorTurnedOnWhileItIsOpenStaysOpen() {
        run(selector(20 * MILLI), new Move(10, 1), new Move(25, 2));

        assertEquals(
                List.of("10000000 control-moved 0 1 15", "45000000 control-moved 0 2 2"), lines.only("control-moved"));
    }

    @Test
    void selectorHoldsARecordedPositionBetweenItsFirstAndLast() {
        run(selector(0), new Move(10, 99));

        assertEquals(List.of("10000000 control-moved 0 1 5"), lines.only("control-moved"));
    }

    @Test
    void threeWayToggleThrownRightOverPassesItsCentre() {
        Control threeWay = control(Kind.THREE_WAY_TOGGLE, new Positions(3, 8 * MILLI, 1), null, List.of(), 0);

        run(threeWay, new Move(10, 1), new Move(20, 2), new Move(30, 0), new Move(60, 1));

        assertEquals(
                List.of(
                        "10000000 control-moved 0 1 1",
                        "20000000 control-moved 0 2 2",
                        "30000000 control-moved 0 3 1",
                        "38000000 control-moved 0 4 0",
                        "60000000 control-moved 0 5 1"),
                lines.only("control-moved"));
        assertEquals(5, lines.only("sampled").size());
    }

    @Test
    void heldButtonIsBelievedAsLongAsItIsHeldAndNotAtAllBelowItsDebounceTime() {
        run(control(Kind.HELD_BUTTON), new Move(10, 1), new Move(13, 0), new Move(30, 1), new Move(50, 0));

        assertEquals(
                List.of("18000000 sampled 0 2", "35000000 sampled 0 3", "55000000 sampled 0 4"),
                lines.only("sampled"),
                "after the short press only that it was let go");
    }

    @Test
    void heldToggleLetGoBetweenTwoPollsIsNeverTold() {
        run(50 * MILLI, control(Kind.HELD_TOGGLE), new Move(60, 2), new Move(70, 0));

        assertEquals(2, lines.only("sampled").size());
        assertEquals(1, lines.only("told").size(), "a position travels as it is when polled");
        assertTrue(
                lines.only("told").get(0).endsWith(" told 0 2"),
                lines.only("told").toString());
    }

    @Test
    void keyIsBelievedAtTheScanOfItsRow() {
        Control keys = matrix(new Matrix(2, 3, 10 * MILLI, true));

        run(keys, new Move(12, 0b000_001), new Move(51, 0b001_000));

        assertEquals(
                List.of("20000000 sampled 0 1", "65000000 sampled 0 2"),
                lines.only("sampled"),
                "row 0 at 0, 10, 20 ms, row 1 at 5, 15, 25 ms; the second move is a release in row 0 and a press in 1");
    }

    @Test
    void withoutDiodesKeysAtThreeCornersOfARectangleShowTheFourth() {
        Matrix bare = new Matrix(2, 2, MILLI, false);

        assertEquals(0b1111, bare.seen(0b0111));
        assertEquals(0b0011, bare.seen(0b0011));
        assertEquals(0b0111, new Matrix(2, 2, MILLI, true).seen(0b0111));
    }

    @Test
    void ghostsAreWhatTheKeysConnectElectricallyWhateverIsHeld() {
        Matrix bare = new Matrix(3, 4, MILLI, false);
        for (int down = 0; down < 1 << 12; down++) {
            int expected = 0;
            for (int key = 0; key < 12; key++) {
                expected |= connected(down, key / 4, 3 + key % 4) ? 1 << key : 0;
            }
            assertEquals(expected, bare.seen(down), "keys " + Integer.toBinaryString(down));
        }
    }

    /** Whether two of the wires 0..2 (rows) and 3..6 (columns) are joined by keys that are down, by spreading out. */
    private static boolean connected(int down, int from, int to) {
        boolean[] reached = new boolean[7];
        reached[from] = true;
        for (int round = 0; round < 7; round++) {
            for (int key = 0; key < 12; key++) {
                if ((down >> key & 1) != 0 && (reached[key / 4] || reached[3 + key % 4])) {
                    reached[key / 4] = true;
                    reached[3 + key % 4] = true;
                }
            }
        }
        return reached[to];
    }

    @Test
    void ghostIsBelievedAsAChangeThatNobodyMade() {
        Control keys = matrix(new Matrix(2, 2, MILLI, false));

        run(keys, new Move(10, 0b0001), new Move(30, 0b0011), new Move(50, 0b0111), new Move(70, 0));

        assertEquals(4, lines.only("control-moved").size());
        assertEquals(
                List.of(" sampled 0 1", " sampled 0 2", " sampled 0 4", " sampled 0 5"),
                lines.only("sampled").stream()
                        .map(line -> line.substring(line.indexOf(' ')))
                        .toList());
    }

    @Test
    void leverIsReportedOnlyWhenItFallsIntoAnotherDetent() {
        Controls controls = controls(lever());
        List<Integer> seen = new ArrayList<>();
        long at = 0;

        for (int pushed : new int[] {100, 270, 271, 500, 501, 230, 229, 990}) {
            controls.move(at++, 0, pushed);
            seen.add(controls.value(0));
        }

        assertEquals(List.of(0, 0, 500, 500, 500, 500, 0, 1000), seen, "the middle is 250, and 20 to either side hold");
    }

    @Test
    void wanderingReadingTakesALeverForOneInTheNextDetent() {
        Fault noisy = new Fault(FaultKind.NOISY_AXIS, 0, 0, 0, -1, 20 * MILLI, Fault.TO_THE_END, 0, 0);

        SegmentRun run = start(50 * MICRO, lever(), List.of(noisy));
        run.advanceTo(40 * MILLI);

        assertEquals(List.of("20000000 sampled 0 1"), lines.only("sampled"));
        assertEquals(List.of(), lines.only("control-moved"));
    }

    @Test
    void selectorThatFlickersReadsItsOpenValueAndComesBack() {
        Fault flickers = new Fault(FaultKind.SWITCH_FLICKERS, 0, 0, 0, -1, 20 * MILLI, 60 * MILLI, 0, 0);
        Controls controls = controls(selector(0), flickers);

        controls.move(MILLI, 0, 3);
        controls.believed(0, 19 * MILLI);
        controls.step();
        assertEquals(15, controls.value(0));

        controls.step();
        assertEquals(3, controls.value(0));
    }

    private static Control selector(long openNanos) {
        return control(Kind.SELECTOR, new Positions(6, openNanos, 15), null, List.of(), 0);
    }

    private static Control lever() {
        return control(
                Kind.LEVER,
                Positions.NONE,
                null,
                List.of(new Detent("idle", 0), new Detent("climb", 500), new Detent("full", 1000)),
                20);
    }

    private static Control matrix(Matrix matrix) {
        return control(Kind.KEY_MATRIX, Positions.NONE, matrix, List.of(), 0);
    }

    private static Control control(Kind kind) {
        return control(kind, Positions.NONE, null, List.of(), 0);
    }

    private static Control control(
            Kind kind, Positions positions, @Nullable Matrix matrix, List<Detent> detents, int deadBand) {
        return new Control("c", kind, 0, DEBOUNCE, 0, deadBand, positions, matrix, detents);
    }

    private void run(Control control, Move... moves) {
        run(50 * MICRO, control, moves);
    }

    private void run(long gapNanos, Control control, Move... moves) {
        SegmentRun run = start(gapNanos, control, List.of());
        StateBlock block = new StateBlock();
        for (Move move : moves) {
            block.addMove(move.millis() * MILLI, 0, move.value());
        }
        run.offer(block);
        run.advanceTo(200 * MILLI);
    }

    private SegmentRun start(long gapNanos, Control control, List<Fault> faults) {
        Pit pit = Pits.pit(
                List.of(Pits.signal(0, false)),
                polling(gapNanos),
                List.of(Pits.node("node", 1, Pits.profile(100 * MICRO), List.of(Pits.lamp(0)), List.of(control))));
        return new SegmentRun(pit, 0, 1, faults, lines);
    }

    private static Controller polling(long gapNanos) {
        return new Controller(
                Controller.Kind.HUB, Adapter.NONE, StateDelivery.BROADCAST, MILLI, 0, 0, 0, gapNanos, 0, 0, 0, 0);
    }

    private Controls controls(Control control, Fault... faults) {
        Pit pit = Pits.pit(
                List.of(Pits.signal(0, false)),
                Pits.controller(StateDelivery.BROADCAST, MILLI, 0),
                List.of(Pits.node("node", 1, Pits.profile(0), List.of(Pits.lamp(0)), List.of(control))));
        return new Controls(Layout.of(pit), 0, 1, order, List.of(faults));
    }
}
