package dropline.harness.bench;

import dropline.harness.verdict.Outcome;
import java.util.List;

/**
 * What an examination came to.
 *
 * @param subject who was examined
 * @param over the link, for people
 * @param floorNanos what the link may add to every instant, ns; 0 where it is exact
 * @param items in the order in which they were examined
 * @param gapsNanos the reply gaps measured, in order of their length, ns
 * @param passport what was measured
 */
public record BenchResult(
        String subject, String over, long floorNanos, List<Item> items, List<Long> gapsNanos, Passport passport) {
    public BenchResult {
        items = List.copyOf(items);
        gapsNanos = List.copyOf(gapsNanos);
    }

    /** Pass where every item passes or cannot be decided and some pass; a failure counts before all. */
    public Outcome outcome() {
        return items.stream().map(Item::outcome).reduce(Outcome.PASS, Outcome::and);
    }
}
