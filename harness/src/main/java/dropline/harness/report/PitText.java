package dropline.harness.report;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Control;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.plan.PollFloor;
import dropline.bus.plan.SegmentWire;
import dropline.bus.plan.StateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.StringJoiner;
import java.util.TreeSet;

/** What was understood of a pit, as plain text: sentences, then its segments, nodes, panels. */
public final class PitText {
    private final Pit pit;
    private final Layout layout;
    private final StringBuilder text = new StringBuilder();

    private PitText(Pit pit) {
        this.pit = pit;
        this.layout = Layout.of(pit);
    }

    /** The whole text, ending with an end of line. */
    public static String of(Pit pit) {
        return new PitText(pit).whole();
    }

    private String whole() {
        sentences();
        segments();
        nodes();
        panels();
        text.append("\nTimes are for the pit as described; nothing was simulated or measured. A cycle at best is one in")
                .append("\nwhich every node answers at once and no state is sent.\n");
        return text.toString();
    }

    private void sentences() {
        List<Panel> panels = panelList();
        text.append(pit.name()).append(": ");
        text.append(Figures.plural(pit.segments().size(), "segment")).append(", ");
        text.append(Figures.plural(layout.nodes().size(), "node")).append(", ");
        text.append(Figures.plural(panels.size(), "panel")).append(", ");
        text.append(Figures.plural(pit.signals().size(), "signal")).append(", ");
        text.append(Figures.plural(layout.controls().size(), "control")).append(".\n");
        Map<String, Integer> statuses = new LinkedHashMap<>();
        for (Panel panel : panels) {
            statuses.merge(panel.status().name().toLowerCase(Locale.ROOT), 1, Integer::sum);
        }
        StringJoiner counts = new StringJoiner(", ", "Panels: ", ".\n");
        statuses.forEach((status, count) -> counts.add(count + " " + status));
        text.append(counts);
        text.append("The host sends its state ");
        text.append(
                pit.statePeriodNanos() == 0
                        ? "as recorded: every row of a recording is a state.\n"
                        : "every " + Figures.time(pit.statePeriodNanos()) + ".\n");
        Pit.Load load = pit.load();
        if (load != null) {
            text.append("It describes a load: every ").append(Figures.time(load.periodNanos())).append(", ");
            text.append(Figures.plural(load.changesPerState(), "change")).append(" (replay it with --for 600s).\n");
        }
        unshown();
    }

    private void unshown() {
        TreeSet<Integer> shown = new TreeSet<>();
        layout.slots().forEach(slot -> shown.add(slot.signal()));
        int unshown = pit.signals().size() - shown.size();
        if (unshown > 0) {
            text.append(Figures.plural(unshown, "signal")).append(unshown == 1 ? " is" : " are");
            text.append(" shown on no panel.\n");
        }
    }

    private void segments() {
        TextTable table = new TextTable(
                "segment", "speed", "protocol", "polled by", "state", ">nodes", ">signals", ">character", ">cycle at best",
                ">cycle mean", ">all state", ">frames");
        for (Segment segment : pit.segments()) {
            PollFloor floor = PollFloor.of(pit, segment);
            int signals = signals(segment);
            StateTime all = StateTime.of(pit, segment, signals);
            Controller controller = segment.controller();
            table.row(
                    segment.name(),
                    Figures.count(segment.baud()) + " baud " + segment.format(),
                    segment.protocol().name(),
                    controller.kind() == Controller.Kind.HUB ? "hub" : "host, " + controller.adapter().name(),
                    controller.state().name().toLowerCase(Locale.ROOT),
                    Integer.toString(segment.nodes().size()),
                    Integer.toString(signals),
                    Figures.time(floor.characterNanos()),
                    Figures.time(floor.shortestCycleNanos()),
                    Figures.time(Math.round(floor.meanCycleNanos())),
                    Figures.time(all.nanos()),
                    Integer.toString(all.frames()));
        }
        section("Segments: a poll cycle without state, and the time to send every signal once", table);
        loads();
    }

    private void loads() {
        Pit.Load load = pit.load();
        if (load == null) {
            return;
        }
        int total = 0;
        for (Segment segment : pit.segments()) {
            total += signals(segment);
        }
        for (Segment segment : pit.segments()) {
            int changes = total == 0 ? 0 : (int) Math.round((double) load.changesPerState() * signals(segment) / total);
            StateTime state = StateTime.of(pit, segment, changes);
            text.append("  The described load takes ").append(Figures.time(state.nanos())).append(" of every ");
            text.append(Figures.time(load.periodNanos())).append(" on ").append(segment.name()).append(": ");
            text.append(Figures.percent((double) state.nanos() / load.periodNanos())).append(", in ");
            text.append(Figures.plural(state.frames(), "frame")).append(".\n");
        }
    }

    private int signals(Segment segment) {
        TreeSet<Integer> signals = new TreeSet<>();
        segment.nodes().forEach(node -> signals.addAll(SegmentWire.signals(pit, node)));
        return signals.size();
    }

    private void nodes() {
        TextTable table = new TextTable(
                "node", "segment", ">address", ">polls", "replies from", "reply gap", ">buffers", ">signals", "panels");
        for (Layout.NodePlace place : layout.nodes()) {
            Node node = place.node();
            Profile profile = node.profile();
            table.row(
                    node.name(),
                    pit.segments().get(place.segment()).name(),
                    Integer.toString(node.address()),
                    Integer.toString(node.weight()),
                    profile.replyFrom().name().toLowerCase(Locale.ROOT),
                    gap(profile.replyGap()),
                    profile.fifoChars() + "+" + profile.ringChars(),
                    Integer.toString(SegmentWire.signals(pit, node).size()),
                    String.join(", ", node.panels().stream().map(Panel::name).toList()));
        }
        section("Nodes: polls are a cycle's, buffers are characters in the UART and in the ring", table);
    }

    private static String gap(Distribution gap) {
        return switch (gap.shape()) {
            case CONSTANT -> Figures.time(gap.baseNanos());
            case UNIFORM -> Figures.time(gap.baseNanos()) + " to " + Figures.time(gap.maxNanos());
            case EXPONENTIAL -> Figures.time(gap.baseNanos()) + " + mean " + Figures.time(gap.spreadNanos())
                    + (gap.maxNanos() == Long.MAX_VALUE ? "" : ", at most " + Figures.time(gap.maxNanos()));
        };
    }

    private void panels() {
        TextTable table = new TextTable(
                "panel", "place", "status", "node", "shows with", "controls", ">update limit", ">control limit");
        for (Layout.NodePlace place : layout.nodes()) {
            for (Panel panel : place.node().panels()) {
                table.row(
                        panel.name(),
                        panel.place(),
                        panel.status().name().toLowerCase(Locale.ROOT),
                        place.node().name(),
                        counted(panel.indicators().stream()
                                .map(Indicator::kind)
                                .map(Enum::name)
                                .toList()),
                        counted(panel.controls().stream()
                                .map(Control::kind)
                                .map(Enum::name)
                                .toList()),
                        Figures.time(panel.budget().updateNanos()),
                        Figures.time(panel.budget().controlNanos()));
            }
        }
        section("Panels", table);
    }

    private static String word(String kind) {
        String small = kind.toLowerCase(Locale.ROOT).replace('_', ' ');
        return small.replace("lcd", "LCD").replace("oled", "OLED");
    }

    private static String counted(List<String> kinds) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        kinds.forEach(kind -> counts.merge(word(kind), 1, Integer::sum));
        StringJoiner words = new StringJoiner(", ");
        counts.forEach((kind, count) -> words.add(count == 1 ? kind : count + " " + kind));
        return words.length() == 0 ? "-" : words.toString();
    }

    private List<Panel> panelList() {
        List<Panel> panels = new ArrayList<>();
        layout.nodes().forEach(place -> panels.addAll(place.node().panels()));
        return panels;
    }

    private void section(String title, TextTable table) {
        text.append('\n').append(title).append('\n').append(table.text());
    }
}
