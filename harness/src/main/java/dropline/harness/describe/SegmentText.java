package dropline.harness.describe;

import dropline.bus.pit.Controller;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Program;
import dropline.bus.pit.Segment;
import dropline.bus.plan.PollFloor;
import dropline.bus.plan.SegmentWire;
import dropline.bus.plan.StateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What is said of one segment. */
final class SegmentText {
    private static final double SECOND_NANOS = 1e9;

    private final Pit pit;
    private final Segment segment;
    private final PollFloor floor;
    private final Sharing sharing;

    SegmentText(Pit pit, Segment segment) {
        this.pit = pit;
        this.segment = segment;
        this.floor = PollFloor.of(pit, segment);
        this.sharing = new Sharing(pit, segment);
    }

    /** Sentences, then the table of its nodes. */
    String text() {
        StringBuilder text = new StringBuilder();
        text.append("Segment ").append(segment.name()).append(": ");
        text.append(Figures.count(segment.nodes().size(), "node"))
                .append(" at ")
                .append(segment.baud());
        text.append(" baud ").append(segment.format()).append(", a character takes ");
        text.append(Figures.time(floor.characterNanos()))
                .append(". ")
                .append(controller())
                .append('\n')
                .append(sharing.lines());
        text.append("A round of polls takes at least ").append(Figures.time(floor.shortestCycleNanos()));
        text.append(", ")
                .append(Figures.time(floor.meanCycleNanos()))
                .append(" on average, while nothing blocks, no state ");
        text.append("is sent and the adapter costs nothing: at most ");
        text.append(Figures.number(SECOND_NANOS / floor.shortestCycleNanos())).append(" rounds a second.\n");
        state(text);
        segment.nodes().forEach(node -> program(text, node));
        Oddities.of(pit, segment)
                .forEach(oddity -> text.append("Note: ").append(oddity).append('\n'));
        return text.append('\n').append(nodes()).toString();
    }

    private static void program(StringBuilder text, Node node) {
        Program program = node.program();
        if (program != null) {
            text.append("Node ")
                    .append(node.name())
                    .append(" runs its own program in a replay, ")
                    .append(program.image().shortName())
                    .append(" on an ")
                    .append(program.chip().word())
                    .append(" at ")
                    .append(Figures.number(program.hz() / 1e6))
                    .append(" MHz; its profile counts for bounds and for size.\n");
        }
    }

    private String controller() {
        Controller controller = segment.controller();
        return sharing.who() + " (" + segment.protocol().name() + ", adapter "
                + controller.adapter().name() + "), state is "
                + Figures.words(controller.state()) + ", time-out " + Figures.time(controller.timeOutNanos()) + ", "
                + (controller.retries() == 1 ? "1 retry" : controller.retries() + " retries") + ".";
    }

    private void state(StringBuilder text) {
        int signals = SegmentWire.all(pit, segment).signals().size();
        if (signals == 0) {
            text.append("No panel on it shows a signal, so no state is sent.\n");
            return;
        }
        StateTime full = StateTime.of(pit, segment, signals);
        boolean broadcast = segment.controller().state() == StateDelivery.BROADCAST;
        text.append("A state in which all ")
                .append(Figures.count(signals, "signal"))
                .append(" changed takes ");
        text.append(Figures.time(full.nanos())).append(" in ").append(Figures.count(full.frames(), "frame"));
        text.append(broadcast ? "" : " with the polls")
                .append(share(full, pit.statePeriodNanos()))
                .append(".\n");
        Pit.@Nullable Load load = pit.load();
        if (load != null && load.changesPerState() > 0) {
            load(text, load, signals);
        }
    }

    private static String share(StateTime state, long periodNanos) {
        return periodNanos == 0
                ? ""
                : ", " + Figures.percent((double) state.nanos() / periodNanos) + " of the time at the host's rate";
    }

    private void load(StringBuilder text, Pit.Load load, int signals) {
        int all = pit.signals().size();
        int changes = (int) (((long) load.changesPerState() * signals + all - 1) / all);
        StateTime state = StateTime.of(pit, segment, changes);
        double share = (double) state.nanos() / load.periodNanos();
        text.append("The described load changes ")
                .append(Figures.count(changes, "signal"))
                .append(" of it every ");
        text.append(Figures.time(load.periodNanos()))
                .append(": ")
                .append(Figures.time(state.nanos()))
                .append(" in ");
        text.append(Figures.count(state.frames(), "frame")).append(", ").append(Figures.percent(share));
        text.append(" of the time");
        if (share >= 1) {
            text.append(". That is more than there is: the segment cannot carry it.\n");
        } else {
            text.append("; the average round is then ");
            text.append(Figures.time(floor.meanCycleNanos(share))).append(".\n");
        }
    }

    private String nodes() {
        Table table = new Table(
                "node", "address", "weight", "panels", "signals", "controls", "replies from", "reply gap", "ring");
        for (Node node : segment.nodes()) {
            List<Integer> signals = SegmentWire.signals(pit, node);
            int controls =
                    node.panels().stream().mapToInt(p -> p.controls().size()).sum();
            table.row(
                    node.name(),
                    Integer.toString(node.address()),
                    Integer.toString(node.weight()),
                    Integer.toString(node.panels().size()),
                    Integer.toString(signals.size()),
                    Integer.toString(controls),
                    Figures.words(node.profile().replyFrom()),
                    Figures.random(node.profile().replyGap()),
                    Integer.toString(node.profile().ringChars()));
        }
        return table.text();
    }
}
