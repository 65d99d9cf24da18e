package dropline.harness.suite;

import dropline.harness.verdict.Outcome;
import java.util.List;

/**
 * What became of a run with one seed.
 *
 * @param run its name in the suite
 * @param seed the run's
 * @param digest of its trace, 16 hexadecimal digits
 * @param caveats what its figures rest on
 * @param judged what there was to judge
 * @param breaches what did not hold, in the order of the rules
 */
public record RunOutcome(
        String run, long seed, String digest, List<String> caveats, Judged judged, List<Breach> breaches) {

    /**
     * How much there was to judge.
     *
     * @param panels that were updated, where budgets were asked for
     * @param controls that were moved, where budgets or controls were asked for
     * @param segments that had a whole round of polls, where a cycle was asked for
     */
    public record Judged(int panels, int controls, int segments) {
        boolean isNothing() {
            return panels + controls + segments == 0;
        }
    }

    public RunOutcome {
        caveats = List.copyOf(caveats);
        breaches = List.copyOf(breaches);
    }

    /** Undecided where there was nothing to judge: that is no success. */
    public Outcome outcome() {
        if (!breaches.isEmpty()) {
            return Outcome.FAIL;
        }
        return judged.isNothing() ? Outcome.UNDECIDED : Outcome.PASS;
    }
}
