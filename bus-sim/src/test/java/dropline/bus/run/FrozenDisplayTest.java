package dropline.bus.run;

import static dropline.bus.Pits.MICRO;
import static dropline.bus.Pits.MILLI;
import static dropline.bus.run.OneIndicator.END;
import static dropline.bus.run.OneIndicator.afterTime;
import static dropline.bus.run.OneIndicator.at;
import static dropline.bus.run.OneIndicator.changes;
import static dropline.bus.run.OneIndicator.fault;
import static dropline.bus.run.OneIndicator.indicator;
import static dropline.bus.run.OneIndicator.node;
import static dropline.bus.run.OneIndicator.pit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.Pits;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceLines;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the eye sees of frozen indicators, and of a host that is silent. */
final class FrozenDisplayTest {
    private final OneIndicator seen = new OneIndicator();

    @Test
    void frozenDisplayShowsItsLatestWithTheFirstRefreshAfterwards() {
        seen.run(Indicator.Kind.DIGITS, fault(FaultKind.FROZEN_DISPLAY, 900 * MILLI, 2500 * MILLI, 0, 0), 1, 2, 3, 4);

        List<String> shown = seen.lines.only("shown");
        assertEquals(List.of(" shown 0 1", " shown 0 3", " shown 0 4"), afterTime(shown));
        assertTrue(at(shown.get(1)) >= 2510 * MILLI && at(shown.get(1)) <= 2560 * MILLI, shown.get(1));
        assertEquals(4, seen.lines.only("applied").size());
    }

    @Test
    void refreshThatEndsInTheFreezeOrBeganInItShowsNothing() {
        TraceLines healthy = new TraceLines();
        SegmentRun run = new SegmentRun(pit(indicator(Indicator.Kind.DIGITS), false), 0, 1, List.of(), healthy);
        run.offer(changes(1));
        run.advanceTo(1000 * MILLI);
        long shownAt = at(healthy.only("shown").get(0));

        seen.run(Indicator.Kind.DIGITS, fault(FaultKind.FROZEN_DISPLAY, shownAt, shownAt + 1, 0, 0), 1);
        seen.run(Indicator.Kind.DIGITS, fault(FaultKind.FROZEN_DISPLAY, 0, shownAt - 1, 0, 0), 1);
        seen.run(Indicator.Kind.DIGITS, fault(FaultKind.FROZEN_DISPLAY, shownAt + 1, shownAt + 2, 0, 0), 1);

        assertEquals(
                List.of(
                        shownAt + 50 * MILLI + " shown 0 1",
                        shownAt + 50 * MILLI + " shown 0 1",
                        shownAt + " shown 0 1"),
                seen.lines.only("shown"));
    }

    @Test
    void frozenToTheEndNothingIsEverShown() {
        for (Indicator.Kind kind : Indicator.Kind.values()) {
            seen.run(kind, fault(FaultKind.FROZEN_DISPLAY, 0, END, 0, 0), 1, 2, 3);
        }

        assertEquals(List.of(), seen.lines.only("shown", "moved"));
        assertEquals(
                3 * Indicator.Kind.values().length, seen.lines.only("applied").size());
    }

    @Test
    void frozenNeedleMovesWhenItIsCommandedAgain() {
        seen.run(
                Indicator.Kind.GAUGE_STEPPER,
                fault(FaultKind.FROZEN_DISPLAY, 900 * MILLI, 1500 * MILLI, 0, 0),
                100,
                200,
                300);

        assertEquals(List.of("0 100", "100 300"), seen.ways());
        assertEquals(List.of(" shown 0 1", " shown 0 3"), afterTime(seen.lines.only("shown")));
    }

    @Test
    void frozenLampIsSwitchedWhenItsValueIsSentAgainUnchanged() {
        Pit pit = Pits.pit(
                List.of(Pits.signal(0, false)),
                Pits.refreshing(StateDelivery.BROADCAST, MILLI, 0, 700 * MILLI),
                List.of(node(Pits.lamp(0))));
        seen.run(pit, fault(FaultKind.FROZEN_DISPLAY, 0, 500 * MILLI, 0, 0), 1);

        List<String> shown = seen.lines.only("shown");
        assertEquals(1, shown.size());
        assertTrue(at(shown.get(0)) >= 700 * MILLI, shown.get(0));
        assertEquals(1, seen.lines.only("applied").size(), "the node had it all along");
    }

    @Test
    void frozenServoGoesOnWithItsFirstFrameAfterwards() {
        seen.run(Indicator.Kind.SERVO, fault(FaultKind.FROZEN_DISPLAY, 900 * MILLI, 1500 * MILLI, 0, 0), 100, 200);

        List<String> shown = seen.lines.only("shown");
        assertEquals(List.of("0 100", "100 200"), seen.ways());
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
        SegmentRun run = new SegmentRun(pit, 0, 1, List.of(fault(FaultKind.FROZEN_DISPLAY, 0, END, 0, 0)), seen.lines);
        StateBlock block = new StateBlock();
        block.addRow(10);
        block.addChange(0, 1);
        block.addChange(1, 1);
        run.offer(block);
        run.advanceTo(5 * MILLI);

        assertEquals(List.of(" shown 2 1"), afterTime(seen.lines.only("shown")));
    }

    @Test
    void silentHostSendsTheLatestWithItsFirstStateAfterwards() {
        Fault silent = new Fault(FaultKind.SILENT_HOST, -1, -1, -1, -1, 900 * MILLI, 3000 * MILLI, 0, 0);
        seen.run(pit(Pits.lamp(0), false), silent, 1, 2, 3, 4, 5);

        assertEquals(List.of("1000000 sent", "3001000000 sent", "4001000000 sent"), seen.lines.only("sent"));
        assertEquals(
                List.of("1000000 queued -1 0 1", "3001000000 queued -1 0 4", "4001000000 queued -1 0 5"),
                seen.lines.only("queued"));
        assertEquals(5, seen.lines.only("changed").size());
        assertEquals(List.of(" shown 0 1", " shown 0 4", " shown 0 5"), afterTime(seen.lines.only("shown")));
    }
}
