package dropline.bus.plan;

import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.protocol.Destination;
import dropline.protocol.NodeWire;
import java.util.List;

/**
 * What it costs to tell some signals' new values to everybody who shows them on a segment, in characters.
 *
 * @param broadcast once for all; 0 where the protocol cannot
 * @param oneByOne in a request to each node that shows one of them
 */
public record LevelTraffic(int broadcast, int oneByOne) {

    /** @param signals indices into the pit's signals */
    public static LevelTraffic of(Pit pit, Segment segment, List<Integer> signals) {
        int oneByOne = 0;
        for (Node node : segment.nodes()) {
            List<Integer> shown = SegmentWire.signals(pit, node);
            if (shown.stream().anyMatch(signals::contains)) {
                NodeWire wire = SegmentWire.of(pit, node);
                oneByOne += chars(segment.protocol().node(wire), shown, signals);
            }
        }
        boolean canBroadcast = segment.protocol().canBroadcast();
        List<Integer> all = SegmentWire.signals(pit, segment);
        NodeWire everybody = SegmentWire.all(pit, segment);
        return new LevelTraffic(
                canBroadcast ? chars(segment.protocol().broadcast(everybody), all, signals) : 0, oneByOne);
    }

    private static int chars(Destination wire, List<Integer> shown, List<Integer> signals) {
        long[] pending = new long[shown.size() / Long.SIZE + 1];
        for (int i = 0; i < shown.size(); i++) {
            if (signals.contains(shown.get(i))) {
                pending[i / Long.SIZE] |= 1L << i;
            }
        }
        return StateFrames.of(wire, shown.size(), pending, 0).chars();
    }
}
