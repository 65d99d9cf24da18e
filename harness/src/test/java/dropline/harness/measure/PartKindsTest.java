package dropline.harness.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Control;
import dropline.bus.pit.Control.Kind;
import dropline.bus.pit.Control.Matrix;
import dropline.bus.pit.Control.Positions;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Motion;
import dropline.bus.pit.Motion.Zeroing;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.run.SegmentRun;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Measured runs of one stepper, or of one control, on the small pit's only node; polled every 50 ms. */
class PartKindsTest {
    private static final long MS = SmallPit.MS;

    @Test
    void displayErrorOfAStepperIsCountedOnceItHasFoundItsPlaceInAllItsPieces() {
        Motion motion = new Motion(200, 400, 0.5, Zeroing.NONE, 0);
        StateBlock block = new StateBlock();
        block.addRow(0);
        block.addChange(SmallPit.SPEED, 100);

        SlotMeasure stepper = run(stepper(motion), null, block).slots().get(0);

        assertEquals(0, stepper.displayErrorMax(), 1e-9, "finding its place at the start is no error");
    }

    @Test
    void aStepperSettlesWhenItsLastPieceEnds() {
        Motion motion = new Motion(200, 400, 0.5, Zeroing.NONE, 0);
        StateBlock block = new StateBlock();
        block.addRow(0);
        block.addChange(SmallPit.SPEED, 0);
        block.addRow(1000 * MS);
        block.addChange(SmallPit.SPEED, 64);

        SlotMeasure stepper = run(stepper(motion), null, block).slots().get(0);

        long moves = stepper.settling().maxNanos() - stepper.latency().maxNanos();
        assertEquals(2e9 * Math.sqrt(64 / 400.0), moves, 3, "2 sqrt(d/a), from first motion to rest");
        assertEquals(64, stepper.displayErrorMax(), 1e-9);
    }

    @Test
    void aHeldButtonLetGoBeforeTheNextPollIsALostStep() {
        ControlMeasure held = moved(control(Kind.HELD_BUTTON, null), 1010, 1, 1020, 0, 2000, 1, 2200, 0);

        assertEquals(1, held.lostSteps());
        assertEquals(4, held.moves());
        assertEquals(0, held.spurious());
    }

    @Test
    void aHeldToggleLetGoBeforeItsDebounceTimeIsALostStep() {
        ControlMeasure held = moved(control(Kind.HELD_TOGGLE, null), 1000, 1, 1200, 0, 2000, 2, 2002, 0);

        assertEquals(1, held.lostSteps());
    }

    @Test
    void aToggleThatWentBackIsNot() {
        ControlMeasure toggle = moved(control(Kind.TOGGLE, null), 1000, 1, 1200, 0, 2000, 1, 2002, 0);

        assertEquals(0, toggle.lostSteps());
    }

    @Test
    void aKeyStruckBetweenTwoPollsWhileAnotherIsDownIsALostStep() {
        Matrix matrix = new Matrix(2, 2, 2 * MS, true);

        ControlMeasure keys = moved(control(Kind.KEY_MATRIX, matrix), 1000, 1, 1220, 3, 1232, 1, 2000, 0);

        assertEquals(1, keys.lostSteps());
    }

    @Test
    void aGhostKeyIsAChangeNobodyMade() {
        Matrix bare = new Matrix(2, 2, 2 * MS, false);

        ControlMeasure keys = moved(control(Kind.KEY_MATRIX, bare), 1000, 1, 1200, 3, 1400, 7, 2000, 0);

        assertEquals(1, keys.spurious());
        assertEquals(0, keys.lostSteps());
        assertEquals(4, keys.latency().count());
    }

    @Test
    void aSelectorSeenOpenMovesTwice() {
        Control selector =
                new Control("c", Kind.SELECTOR, 1, 5 * MS, 0, 0, new Positions(6, 80 * MS, 6), null, List.of());

        ControlMeasure measure = moved(selector, 1000, 3);

        assertEquals(2, measure.moves());
        assertEquals(2, measure.latency().count());
        assertEquals(0, measure.lostSteps());
    }

    private static Control control(Kind kind, @Nullable Matrix matrix) {
        return new Control("c", kind, 1, 5 * MS, 0, 0, Positions.NONE, matrix, List.of());
    }

    private static Indicator stepper(Motion motion) {
        return new Indicator(
                "stepper",
                Indicator.Kind.STEPPER,
                List.of(SmallPit.SPEED),
                0,
                0,
                0,
                Indicator.Blocks.NOTHING,
                motion,
                Indicator.Glow.NONE);
    }

    /** Millisecond and value in turn. */
    private static ControlMeasure moved(Control control, int... moves) {
        StateBlock block = new StateBlock();
        for (int i = 0; i < moves.length; i += 2) {
            block.addMove(moves[i] * MS, 0, moves[i + 1]);
        }
        return run(stepper(Motion.atOnce(100)), control, block).controls().get(0);
    }

    private record Measured(List<SlotMeasure> slots, List<ControlMeasure> controls) {}

    private static Measured run(Indicator indicator, @Nullable Control control, StateBlock block) {
        Pit pit = pit(indicator, control);
        SegmentMeasures measures = new SegmentMeasures(pit, Layout.of(pit), 0);
        SegmentRun run = new SegmentRun(pit, 0, 1, List.of(), measures);
        run.offer(block);
        run.advanceTo(6_000 * MS);
        run.end();
        return new Measured(measures.panels().get(0).slots(), measures.controls());
    }

    private static Pit pit(Indicator indicator, @Nullable Control control) {
        Pit small = SmallPit.pit();
        Segment segment = small.segments().get(0);
        Node node = segment.nodes().get(0);
        Panel panel = node.panels().get(0);
        Panel one = new Panel(
                "one",
                "",
                panel.status(),
                List.of(indicator),
                control == null ? List.of() : List.of(control),
                panel.budget());
        Controller polling = new Controller(
                Controller.Kind.HUB,
                Adapter.NONE,
                Controller.StateDelivery.ADDRESSED,
                2 * MS,
                1,
                0,
                0,
                50 * MS,
                0,
                0,
                0,
                0);
        Node alone = new Node(node.name(), 1, 1, node.profile(), List.of(one), List.of());
        return new Pit(
                "one",
                0,
                null,
                small.signals(),
                List.of(new Segment(
                        segment.name(),
                        segment.baud(),
                        segment.format(),
                        segment.protocol(),
                        polling,
                        List.of(alone),
                        true)));
    }
}
