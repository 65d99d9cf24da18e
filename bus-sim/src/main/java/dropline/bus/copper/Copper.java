package dropline.bus.copper;

import dropline.bus.pit.Pit;
import dropline.bus.rule.Ruling;
import java.util.ArrayList;
import java.util.List;

/** Judges the wires of a segment: every rule of copper, for each of its pairs. */
public final class Copper {
    private Copper() {}

    /** What the rules come to on a segment; none where it is straight on USB, without a pair. */
    public static List<Ruling> rule(Pit pit, int segment, GroundVolts grounds) {
        return rule(pit, segment, grounds, LoadModel.CONSERVATIVE);
    }

    /** The same with the transceivers' loads where a model has them. */
    public static List<Ruling> rule(Pit pit, int segment, GroundVolts grounds, LoadModel model) {
        List<Pair> pairs = Pair.of(pit, segment);
        if (pairs.isEmpty()) {
            return List.of();
        }
        List<Ruling> rulings = new ArrayList<>();
        int nodes = pit.segments().get(segment).nodes().size();
        rulings.add(Ruling.of(
                CopperRule.ADDRESSES,
                pit.segments().get(segment).name(),
                nodes,
                CopperRule.MOST_ADDRESSES,
                "one for each board; leave a fifth free (common practice): one more panel always comes"));
        for (Pair pair : pairs) {
            Circuit circuit = Circuit.of(pair);
            rulings.addAll(new LevelRules(pair, circuit, grounds, model).rulings());
            rulings.addAll(new ResistorRules(pair, circuit).rulings());
            rulings.addAll(new CableRules(pair, grounds).rulings());
        }
        return List.copyOf(rulings);
    }
}
