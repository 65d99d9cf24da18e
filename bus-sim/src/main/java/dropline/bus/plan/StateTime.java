package dropline.bus.plan;

import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.protocol.Destination;
import dropline.protocol.NodeWire;

/**
 * How long the wire is taken by one state: broadcasts with the gap or turnaround after each, or, where state is
 * addressed, what it adds to the polls that carry it.
 *
 * @param frames broadcasts, or polls that carry state
 * @param nanos time they take, ns
 */
public record StateTime(int frames, long nanos) {

    /**
     * The time for the first {@code changes} signals of a segment, in the order of their numbers; where state is
     * addressed, of every node in proportion.
     *
     * @param changes signals that changed, 0 or more; more than there are count as all
     */
    public static StateTime of(Pit pit, Segment segment, int changes) {
        return segment.controller().state() == StateDelivery.BROADCAST
                ? broadcasts(pit, segment, changes)
                : addressed(pit, segment, changes);
    }

    private static StateTime broadcasts(Pit pit, Segment segment, int changes) {
        NodeWire all = SegmentWire.all(pit, segment);
        Destination wire = segment.protocol().broadcast(all);
        long gap = Math.max(
                        Math.max(
                                segment.controller().gapNanos(),
                                segment.controller().turnaroundNanos()),
                        segment.silenceNanos())
                + pit.turnNanos(pit.segments().indexOf(segment));
        StateFrames frames = StateFrames.ofFirst(wire, all.signals().size(), changes, 0);
        return new StateTime(frames.count(), PollFloor.chars(segment, frames.chars()) + frames.count() * gap);
    }

    private static StateTime addressed(Pit pit, Segment segment, int changes) {
        int total = segment.nodes().stream()
                .mapToInt(node -> SegmentWire.signals(pit, node).size())
                .sum();
        int frames = 0;
        long nanos = 0;
        for (Node node : segment.nodes()) {
            NodeWire one = SegmentWire.of(pit, node);
            int signals = one.signals().size();
            int changed = total == 0 ? 0 : (int) (((long) Math.min(changes, total) * signals + total - 1) / total);
            Destination wire = segment.protocol().node(one);
            StateFrames carried = StateFrames.ofFirst(wire, signals, changed, wire.requestChars(new int[0], 0));
            frames += carried.count();
            nanos += PollFloor.chars(segment, carried.chars());
        }
        return new StateTime(frames, nanos);
    }
}
