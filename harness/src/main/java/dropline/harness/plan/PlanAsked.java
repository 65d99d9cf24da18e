package dropline.harness.plan;

import dropline.bus.pit.Pit;
import java.util.List;

/**
 * What is asked of a plan.
 *
 * @param droplineVersion the program's
 * @param recording name of what is played, for people
 * @param pit as it stands
 * @param order names of all nodes in the order of the pit file
 * @param bauds rates to try beside those the pit has, ascending
 * @param sameSegments whether to keep the pit's segments, neither fewer nor more
 * @param margin share of every budget that must be left, 0 or more, below 1
 * @param seed of the first run
 * @param seeds how many seeds to try, at least 1
 */
public record PlanAsked(
        String droplineVersion,
        String recording,
        Pit pit,
        List<String> order,
        List<Integer> bauds,
        boolean sameSegments,
        double margin,
        long seed,
        int seeds) {
    public PlanAsked {
        order = List.copyOf(order);
        bauds = List.copyOf(bauds);
        if (!(margin >= 0 && margin < 1)) {
            throw new IllegalArgumentException("margin must be 0 or more and below 1: margin=" + margin);
        }
        if (seeds < 1) {
            throw new IllegalArgumentException("seeds must be at least 1: seeds=" + seeds);
        }
    }
}
