package dropline.harness.finding;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.finding.Finding.Subject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** One segment's evidence beside its description, and the findings made of it so far. */
final class Scene {
    /** Causes that still read well in full. */
    private static final int READABLE = 2;

    final Pit pit;
    final Layout layout;
    final SegmentEvidence evidence;
    final Segment segment;
    final BusEvidence bus;

    /** This segment's nodes only, in poll order. */
    final List<NodeEvidence> nodes;

    private final List<Finding> findings = new ArrayList<>();

    Scene(Pit pit, Layout layout, SegmentEvidence evidence) {
        this.pit = pit;
        this.layout = layout;
        this.evidence = evidence;
        this.segment = pit.segments().get(evidence.segment());
        this.bus = evidence.bus();
        this.nodes = Arrays.stream(evidence.nodes()).filter(Objects::nonNull).toList();
    }

    Promise promise(NodeEvidence node) {
        return evidence.promises()[node.node];
    }

    String name(NodeEvidence node) {
        return layout.nodes().get(node.node).node().name();
    }

    List<Finding> findings() {
        return findings;
    }

    /** Whether a node was named already. */
    boolean named(NodeEvidence node) {
        return findings.stream().anyMatch(f -> f.subject() == Subject.NODE && f.part() == node.node);
    }

    void host(Sightings seen, String shows, Cause... causes) {
        add(Subject.HOST, "the host", -1, Confidence.CERTAIN, seen, shows, null, causes);
    }

    void segment(Confidence confidence, Sightings seen, String shows, Cause... causes) {
        String name = "segment " + segment.name();
        add(Subject.SEGMENT, name, evidence.segment(), confidence, seen, shows, null, causes);
    }

    void node(NodeEvidence node, Confidence confidence, Sightings seen, String shows, Cause... causes) {
        nodeNext(node, confidence, seen, shows, null, causes);
    }

    /** {@code next} is what tells the causes apart. */
    void nodeNext(
            NodeEvidence node,
            Confidence confidence,
            Sightings seen,
            String shows,
            @Nullable String next,
            Cause... causes) {
        String name = "node " + name(node) + " (address "
                + layout.nodes().get(node.node).node().address() + ")";
        add(Subject.NODE, name, node.node, confidence, seen, shows, next, causes);
    }

    void segmentNext(Confidence confidence, Sightings seen, String shows, String next, Cause... causes) {
        String name = "segment " + segment.name();
        add(Subject.SEGMENT, name, evidence.segment(), confidence, seen, shows, next, causes);
    }

    void slot(SlotEvidence slot, Confidence confidence, Sightings seen, String shows, Cause... causes) {
        Layout.Slot place = layout.slots().get(slot.slot);
        String name = place.indicator().name() + " on panel " + place.panel().name();
        add(Subject.INDICATOR, name, slot.slot, confidence, seen, shows, null, causes);
    }

    void control(ControlEvidence control, Confidence confidence, Sightings seen, String shows, Cause... causes) {
        Layout.ControlPlace place = layout.controls().get(control.control);
        String name = place.control().name() + " on panel " + place.panel().name();
        add(Subject.CONTROL, name, control.control, confidence, seen, shows, null, causes);
    }

    private void add(
            Subject subject,
            String name,
            int part,
            Confidence confidence,
            Sightings seen,
            String shows,
            @Nullable String next,
            Cause... causes) {
        findings.add(new Finding(
                List.of(causes),
                subject,
                subject == Subject.NODE ? layout.nodes().get(part).node().name() : plain(subject, name),
                part,
                segment.name(),
                confidence,
                seen.count(),
                seen.firstNanos(),
                seen.lastNanos(),
                evidence.tiers(),
                sentence(name, shows, causes),
                next == null ? causes[0].next() : next));
    }

    private static String sentence(String name, String shows, Cause... causes) {
        String start = name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
        if (causes.length <= READABLE) {
            List<String> words = Arrays.stream(causes).map(Cause::words).toList();
            return start + " " + Words.either(words) + ": " + shows + ".";
        }
        List<String> words = Arrays.stream(causes).map(Cause::plainName).toList();
        return start + ": " + shows + ". From here it can be " + Words.either(words) + ".";
    }

    private String plain(Subject subject, String name) {
        return subject == Subject.HOST ? "host" : subject == Subject.SEGMENT ? segment.name() : name;
    }
}
