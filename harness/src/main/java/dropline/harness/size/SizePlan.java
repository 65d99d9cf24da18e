package dropline.harness.size;

import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import java.util.List;

/**
 * What is asked of a sizing.
 *
 * @param droplineVersion the program's
 * @param recording name of what is played, for people
 * @param pit the pit as it stands
 * @param segment index of the segment to size
 * @param adding boards to add in turn, each with one panel; empty for the segment's own panels in turn, save those that
 *     would miss their limit even if alone on it
 * @param bauds rates to try, ascending, the segment's own among them
 * @param margin share of every budget that must be left, 0 or more, below 1
 * @param seed of the first run
 * @param seeds how many seeds to try, at least 1
 * @param limits rules beside time
 */
public record SizePlan(
        String droplineVersion,
        String recording,
        Pit pit,
        int segment,
        List<Node> adding,
        List<Integer> bauds,
        double margin,
        long seed,
        int seeds,
        List<Limit> limits) {
    public SizePlan {
        adding = List.copyOf(adding);
        bauds = List.copyOf(bauds);
        limits = List.copyOf(limits);
        if (!(margin >= 0 && margin < 1)) {
            throw new IllegalArgumentException("margin must be 0 or more and below 1: margin=" + margin);
        }
        if (seeds < 1) {
            throw new IllegalArgumentException("seeds must be at least 1: seeds=" + seeds);
        }
    }
}
