package dropline.harness.size;

import dropline.bus.pit.Cable;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.replay.Source;
import dropline.harness.verdict.Stage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Panels and controls that would not keep their budget with the margin even if they had the segment to themselves:
 * further panels are not what ails them.
 *
 * @param out those that would then miss even the budget itself: they are named and do not count
 * @param whole those that would keep it: they are judged against all of it
 */
public record Aside(List<Fared> out, List<Fared> whole) {
    /** Everybody counts. */
    public static final Aside NOBODY = new Aside(List.of(), List.of());

    public Aside {
        out = List.copyOf(out);
        whole = List.copyOf(whole);
    }

    boolean isEmpty() {
        return out.isEmpty() && whole.isEmpty();
    }

    boolean isOut(String name, boolean control) {
        return out.stream()
                .anyMatch(one -> one.control() == control && one.name().equals(name));
    }

    /** Whether the panel, or a control on it, is among those that do not count. */
    boolean isOut(Panel panel) {
        return out.stream()
                .anyMatch(one -> one.control()
                        ? panel.controls().stream()
                                .anyMatch(control -> control.name().equals(one.name()))
                        : panel.name().equals(one.name()));
    }

    boolean isWhole(String name, boolean control) {
        return whole.stream()
                .anyMatch(one -> one.control() == control && one.name().equals(name));
    }

    /** Plays the segment as it stands, then each that misses alone on it. */
    static Aside of(Pit pit, int segment, Source.Opening opening, long seed, double margin, Judging judging)
            throws IOException {
        Fare now = judging.all(List.of(new Candidate(pit, segment, opening, seed, Candidate.HEALTHY)))
                .get(0);
        List<Fared> missing =
                now.each().stream().filter(one -> !one.keeps(margin)).toList();
        int first = firstNode(pit, segment);
        List<Candidate> alone = new ArrayList<>();
        for (Fared one : missing) {
            alone.add(alone(pit, segment, one.node() - first, opening, seed));
        }
        List<Fare> fares = judging.all(alone);
        List<Fared> out = new ArrayList<>();
        List<Fared> whole = new ArrayList<>();
        for (int i = 0; i < missing.size(); i++) {
            for (Fared then : fares.get(i).each()) {
                if (then.isOf(missing.get(i)) && !then.keeps(margin) && isOwnDoing(then)) {
                    (then.keeps(0) ? whole : out).add(missing.get(i));
                }
            }
        }
        return new Aside(out, whole);
    }

    /** Whether its time goes into its own board; what waits for the wire even alone there has a fault to be found. */
    private static boolean isOwnDoing(Fared alone) {
        return alone.mostly() == null || alone.mostly() == Stage.DEVICE || alone.mostly() == Stage.NODE_WAIT;
    }

    /** Index into the pit's {@link Layout#nodes()} of a segment's first node. */
    public static int firstNode(Pit pit, int segment) {
        return pit.segments().subList(0, segment).stream()
                .mapToInt(before -> before.nodes().size())
                .sum();
    }

    /** The segment with just one of its nodes. */
    private static Candidate alone(Pit pit, int segment, int node, Source.Opening opening, long seed) {
        Segment before = pit.segments().get(segment);
        List<Node> one = List.of(before.nodes().get(node));
        Cable cable = before.isShared() ? Cable.chain(1) : before.cable();
        Pit alone = pit.with(segment, before.with(one, cable));
        Mirror mirror =
                Mirror.between(Layout.of(pit), Layout.of(alone), pit.signals().size());
        return new Candidate(alone, segment, () -> mirror.over(opening.open()), seed, Candidate.HEALTHY);
    }
}
