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
 * @param passport what was measured
 */
public record BenchResult(String subject, String over, long floorNanos, List<Item> items, Passport passport) {
    public BenchResult {
        items = List.copyOf(items);
    }

    /** Pass where every item passes or cannot be decided and some pass; a failure counts before all. */
    public Outcome outcome() {
        return items.stream().map(Item::outcome).reduce(Outcome.PASS, Outcome::and);
    }
}
