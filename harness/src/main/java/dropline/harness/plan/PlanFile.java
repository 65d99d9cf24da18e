package dropline.harness.plan;

import dropline.bus.pit.Cable;
import dropline.bus.pit.Cable.Topology;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.harness.pitfile.Measure;
import dropline.harness.pitfile.PitEdits;
import dropline.harness.yaml.YamlText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;

/** A plan as a pit file: the text of the present one, in which only what the plan changes stands otherwise. */
public final class PlanFile {
    private static final String SEGMENTS = "segments";
    private static final String NODES = "nodes";
    private static final String CONTROLLER = "controller";

    private final Pit before;
    private final List<SegmentChange> changes;
    private final PitEdits edits;
    private final Map<String, Node> nodesBefore = new LinkedHashMap<>();
    private final Map<String, Segment> segmentsBefore = new LinkedHashMap<>();

    private PlanFile(Pit before, List<SegmentChange> changes, PitEdits edits) {
        this.before = before;
        this.changes = changes;
        this.edits = edits;
        for (Segment segment : before.segments()) {
            segmentsBefore.put(segment.name(), segment);
            segment.nodes().forEach(node -> nodesBefore.put(node.name(), node));
        }
    }

    /**
     * The whole text.
     *
     * @param file how the present file is called, for a line at the top and for messages
     * @param text of the present file
     * @throws PitEdits.NotEditable where something to be changed stands in another file, or in a form that cannot be
     *     edited
     */
    public static String of(Planned planned, Pit before, String file, String text) {
        PitEdits edits = new PitEdits(file, text);
        new PlanFile(before, planned.changes(), edits).write();
        return YamlText.comment("Planned by dropline size --plan from " + file) + "\n" + edits.text();
    }

    /** Copies first, while what they are like still stands as it was. */
    private void write() {
        List<SegmentChange> kept =
                changes.stream().filter(change -> change.planned() != null).toList();
        String last = "";
        for (SegmentChange change : kept) {
            if (change.isFurther()) {
                further(change, last.isEmpty() ? change.name() : last);
            }
            last = change.isFurther() ? change.plannedName() : "";
        }
        for (SegmentChange change : kept) {
            Segment planned = Objects.requireNonNull(change.planned());
            segment(change, planned);
            planned.nodes().forEach(node -> node(planned, node));
        }
        changes.stream().filter(change -> change.planned() == null).forEach(this::dropped);
    }

    private void dropped(SegmentChange change) {
        edits.remove(SEGMENTS, change.name());
    }

    private void further(SegmentChange change, String after) {
        String name = change.plannedName();
        edits.copy(YamlText.scalar(name), after, SEGMENTS, change.name());
        String hub = change.furtherHub();
        if (hub != null) {
            String like =
                    edits.scalar(SEGMENTS, change.name(), CONTROLLER, "hub").orElseThrow();
            edits.copy(YamlText.scalar(hub), like, "hubs", like);
            edits.set(YamlText.scalar(hub), SEGMENTS, name, CONTROLLER, "hub");
        }
    }

    private void segment(SegmentChange change, Segment planned) {
        Segment like = present(change);
        String name = planned.name();
        if (planned.baud() != like.baud()) {
            edits.set(Measure.baud().write(planned.baud()), SEGMENTS, name, "baud");
        }
        if (planned.controller().state() != like.controller().state()) {
            String word = planned.controller().state() == StateDelivery.BROADCAST ? "broadcast" : "addressed";
            edits.set(word, SEGMENTS, name, CONTROLLER, "state");
        }
        if (planned.controller().timeOutNanos() != like.controller().timeOutNanos()) {
            String time = Measure.time().write(planned.controller().timeOutNanos());
            edits.set(time, SEGMENTS, name, CONTROLLER, "time-out");
        }
        order(planned);
        Cable cable = planned.cable();
        if (cable.fitted().terminators().stated()) {
            fitted(
                    planned,
                    like,
                    "terminators",
                    cable.fitted().terminators().at(),
                    like.cable().fitted().terminators().at(),
                    "ohms: " + cable.fitted().terminators().ohms() + " ohm");
        }
        if (cable.fitted().bias().stated()) {
            long millivolts = Math.round(cable.fitted().bias().volts() * 1000);
            fitted(
                    planned,
                    like,
                    "bias-resistors",
                    cable.fitted().bias().at(),
                    like.cable().fitted().bias().at(),
                    "ohms: " + cable.fitted().bias().ohms() + " ohm, volts: "
                            + Measure.voltage().write(millivolts));
        }
    }

    private Segment present(SegmentChange change) {
        Segment like = segmentsBefore.get(change.name());
        if (like == null) {
            throw new IllegalArgumentException("a change must be of a segment there is: segment=" + change.name());
        }
        return like;
    }

    /** An order is written only where it is not that of the file. */
    private void order(Segment planned) {
        List<Integer> stops = planned.cable().arms().stream()
                .flatMap(arm -> arm.stops().stream())
                .toList();
        boolean chain = planned.cable().topology() == Topology.CHAIN;
        List<Integer> usual = IntStream.range(
                        chain ? Cable.CONTROLLER : 0, planned.nodes().size())
                .boxed()
                .toList();
        boolean asInFile = chain
                ? stops.equals(usual)
                : planned.cable().arms().stream()
                        .allMatch(arm ->
                                arm.stops().equals(arm.stops().stream().sorted().toList()));
        if (asInFile) {
            edits.remove(SEGMENTS, planned.name(), "order");
        } else {
            edits.set(names(planned, stops), SEGMENTS, planned.name(), "order");
        }
    }

    private void fitted(
            Segment planned, Segment like, String key, List<Integer> at, List<Integer> before, String rest) {
        if (!names(planned, at).equals(names(like, before))) {
            edits.set("{at: " + names(planned, at) + ", " + rest + "}", SEGMENTS, planned.name(), key);
        }
    }

    private static String names(Segment segment, List<Integer> stops) {
        List<String> names = new ArrayList<>();
        for (int stop : stops) {
            names.add(
                    stop == Cable.CONTROLLER
                            ? CONTROLLER
                            : YamlText.scalar(segment.nodes().get(stop).name()));
        }
        return names.isEmpty() ? "[none]" : "[" + String.join(", ", names) + "]";
    }

    private void node(Segment planned, Node node) {
        Node now = nodesBefore.get(node.name());
        if (now == null) {
            throw new IllegalArgumentException("a plan must not add boards: node=" + node.name());
        }
        String segmentNow = before.segments().stream()
                .filter(segment -> segment.nodes().contains(now))
                .findFirst()
                .orElseThrow()
                .name();
        if (segmentNow.equals(planned.name()) && node.equals(now)) {
            return;
        }
        mustStandAlone(node);
        if (!segmentNow.equals(planned.name())) {
            edits.set(YamlText.scalar(planned.name()), NODES, node.name(), "segment");
            arm(planned, node);
        }
        if (node.address() != now.address()) {
            edits.set(Integer.toString(node.address()), NODES, node.name(), "address");
        }
        if (node.weight() != now.weight()) {
            edits.set(Integer.toString(node.weight()), NODES, node.name(), "weight");
        }
        if (!node.profile().equals(now.profile())) {
            profile(node.name(), node.profile());
        }
    }

    private void mustStandAlone(Node node) {
        if (!edits.has(NODES, node.name())) {
            throw new PitEdits.NotEditable("board " + node.name() + " stands in an included file, or is one of several"
                    + " written with addresses:; write it out by itself");
        }
    }

    private void arm(Segment planned, Node node) {
        if (planned.cable().topology() != Topology.STAR) {
            edits.remove(NODES, node.name(), "arm");
            return;
        }
        int position = planned.nodes().indexOf(node);
        String arm = planned.cable().arms().stream()
                .filter(one -> one.stops().contains(position))
                .findFirst()
                .orElseThrow()
                .name();
        edits.set(YamlText.scalar(arm), NODES, node.name(), "arm");
    }

    /** Only its clock's divider differs. */
    private void profile(String name, Profile profile) {
        String ticks = Integer.toString(profile.ticksPerBit());
        String samples = Integer.toString(profile.transceiver().samplesPerBit());
        if (edits.isGroup(NODES, name, "profile")) {
            edits.set(ticks, NODES, name, "profile", "ticks-per-bit");
            edits.set(samples, NODES, name, "profile", "samples-per-bit");
            return;
        }
        String like = edits.scalar(NODES, name, "profile")
                .map(named -> "like: " + YamlText.scalar(named) + ", ")
                .orElse("");
        edits.set(
                "{" + like + "ticks-per-bit: " + ticks + ", samples-per-bit: " + samples + "}", NODES, name, "profile");
    }
}
