package dropline.bus.run;

import static dropline.bus.Pits.MICRO;
import static dropline.bus.Pits.MILLI;

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

/** One indicator on one node, with a fault: its signal changes once a second, and what is seen is kept. */
final class OneIndicator {
    static final long END = Fault.TO_THE_END;

    final TraceLines lines = new TraceLines();

    SegmentRun run(Indicator.Kind kind, Fault fault, int... values) {
        return run(pit(indicator(kind), false), fault, values);
    }

    SegmentRun run(Pit pit, Fault fault, int... values) {
        SegmentRun run = new SegmentRun(pit, 0, 1, List.of(fault), lines);
        run.offer(changes(values));
        run.advanceTo(values.length * 1000L * MILLI);
        return run;
    }

    /** One change a second, the first after 1 ms. */
    static StateBlock changes(int... values) {
        return changes(1000 * MILLI, values);
    }

    static StateBlock changes(long everyNanos, int... values) {
        StateBlock block = new StateBlock();
        for (int i = 0; i < values.length; i++) {
            block.addRow(i * everyNanos + MILLI);
            block.addChange(0, values[i]);
        }
        return block;
    }

    static Fault fault(FaultKind kind, long from, long until, double rate, long amount) {
        return new Fault(kind, 0, 0, 0, -1, from, until, rate, amount);
    }

    static Pit pit(Indicator indicator, boolean wraps) {
        return Pits.pit(
                List.of(Pits.signal(0, wraps)),
                Pits.controller(StateDelivery.BROADCAST, MILLI, 0),
                List.of(node(indicator)));
    }

    static Node node(Indicator indicator) {
        return Pits.node("node", 1, Pits.profile(100 * MICRO), List.of(indicator), List.of());
    }

    static Indicator indicator(Indicator.Kind kind) {
        if (kind.moves()) {
            return needle(kind);
        }
        long every = kind.refreshes() ? 50 * MILLI : 0;
        long takes = kind.refreshes() ? 10 * MILLI : 0;
        return new Indicator("device", kind, List.of(0), 0, every, takes, Indicator.Blocks.NOTHING, 0);
    }

    static Indicator needle(Indicator.Kind kind) {
        long frame = kind.hasFrames() ? 20 * MILLI : 0;
        return new Indicator("device", kind, List.of(0), 0, frame, 0, Indicator.Blocks.NOTHING, 1000);
    }

    /** From where to where each motion went. */
    List<String> ways() {
        return lines.only("moved").stream().map(OneIndicator::way).toList();
    }

    static String way(String moved) {
        String[] words = moved.split(" ");
        return words[3] + " " + words[5];
    }

    static long at(String line) {
        return Long.parseLong(line.split(" ")[0]);
    }

    static List<String> afterTime(List<String> lines) {
        List<String> cut = new ArrayList<>();
        lines.forEach(line -> cut.add(line.substring(line.indexOf(' '))));
        return cut;
    }
}
