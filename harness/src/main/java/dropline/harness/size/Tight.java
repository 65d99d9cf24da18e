package dropline.harness.size;

import dropline.bus.bound.Bound;
import dropline.bus.bound.WorstCase;
import dropline.bus.pit.Control;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The panel or control that came nearest its budget, or went farthest beyond it, and when.
 *
 * @param fared how it fared
 * @param deadNode the node that was dead then; null for none
 * @param boundNanos no time of it can be longer, from the stated maxima, ns; {@link Long#MAX_VALUE} where nothing
 *     bounds it
 */
public record Tight(Fared fared, @Nullable String deadNode, long boundNanos) {

    /** With its bound in the pit it fared in, of which this is the segment; {@code dead} as in {@link Candidate}. */
    public static Tight of(Fared fared, Pit pit, int segment, int dead) {
        int position = fared.node() - Aside.firstNode(pit, segment);
        List<Node> nodes = pit.segments().get(segment).nodes();
        Node node = nodes.get(position);
        WorstCase worst = WorstCase.of(pit, segment, dead);
        Bound bound = fared.control() ? control(worst, position, node, fared) : panel(worst, position, node, fared);
        String deadNode = dead == Candidate.HEALTHY ? null : nodes.get(dead).name();
        return new Tight(fared, deadNode, bound == null ? Long.MAX_VALUE : bound.nanos());
    }

    private static @Nullable Bound control(WorstCase worst, int position, Node node, Fared fared) {
        for (Panel panel : node.panels()) {
            for (Control control : panel.controls()) {
                if (control.name().equals(fared.name())) {
                    return worst.control(position, control);
                }
            }
        }
        return null;
    }

    private static @Nullable Bound panel(WorstCase worst, int position, Node node, Fared fared) {
        for (Panel panel : node.panels()) {
            if (panel.name().equals(fared.name())) {
                return worst.update(position, panel);
            }
        }
        return null;
    }

    /** Whether anything bounds it. */
    public boolean isBounded() {
        return boundNanos != Long.MAX_VALUE;
    }
}
