package dropline.harness.finding;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.trace.TraceSink;

/**
 * What one segment's trace tells, folded event by event in constant space, allocating nothing. The rules read it once
 * the run has ended.
 */
public final class SegmentEvidence {
    /** So long a host may take for anything, ns. */
    private static final long ANY_NANOS = Long.MAX_VALUE / 4;

    private final int segment;
    private final Tiers tiers;
    private final BusEvidence bus = new BusEvidence();
    private final NodeEvidence[] nodes;
    private final Promise[] promises;
    private final SlotEvidence[] slots;
    private final ControlEvidence[] controls;
    private final TraceSink sink;

    /**
     * @param layout the pit's
     * @param segmentIndex index into {@link Pit#segments()}
     * @param tiers how much of the trace is looked at; the rest is not even seen
     */
    public SegmentEvidence(Pit pit, Layout layout, int segmentIndex, Tiers tiers) {
        this.segment = segmentIndex;
        this.tiers = tiers;
        Segment described = pit.segments().get(segmentIndex);
        nodes = new NodeEvidence[layout.nodes().size()];
        promises = new Promise[nodes.length];
        slots = new SlotEvidence[layout.slots().size()];
        controls = new ControlEvidence[layout.controls().size()];
        for (int i = 0; i < nodes.length; i++) {
            if (layout.nodes().get(i).segment() == segmentIndex) {
                nodes[i] = new NodeEvidence(i);
                promises[i] = Promise.of(pit, described, layout.nodes().get(i).node());
            }
        }
        for (int i = 0; i < slots.length; i++) {
            if (layout.slots().get(i).segment() == segmentIndex) {
                slots[i] = new SlotEvidence(i);
            }
        }
        for (int i = 0; i < controls.length; i++) {
            if (layout.controls().get(i).segment() == segmentIndex) {
                controls[i] = new ControlEvidence(i);
            }
        }
        double charNanos = UartClock.exact(described.baud()).charsNanos(described.format(), 1000) / 1000.0;
        long slackNanos = tiers == Tiers.HOST ? ANY_NANOS : 0;
        Fold fold = new Fold(
                new WireFold(bus, nodes, promises, described.nodes().size(), charNanos, slackNanos),
                new PartFold(pit, layout, nodes, promises, slots, controls),
                new ControllerFold(pit, layout, segmentIndex, bus, nodes, promises, slackNanos));
        sink = tiers == Tiers.ALL ? fold : new ControllerOnly(fold);
    }

    /** Takes the segment's events. */
    public TraceSink sink() {
        return sink;
    }

    /** Index into {@link Pit#segments()}. */
    public int segment() {
        return segment;
    }

    /** How much of the trace was looked at. */
    public Tiers tiers() {
        return tiers;
    }

    BusEvidence bus() {
        return bus;
    }

    /** By index of the layout; null where a node is not this segment's. */
    NodeEvidence[] nodes() {
        return nodes;
    }

    Promise[] promises() {
        return promises;
    }

    SlotEvidence[] slots() {
        return slots;
    }

    ControlEvidence[] controls() {
        return controls;
    }
}
