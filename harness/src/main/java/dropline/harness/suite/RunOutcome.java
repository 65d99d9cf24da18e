package dropline.harness.suite;

import dropline.bus.trace.Digest;
import dropline.harness.verdict.Outcome;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/**
 * What became of a run with one seed.
 *
 * @param run its name in the suite
 * @param seed the run's
 * @param digest of its trace, 16 hexadecimal digits
 * @param caveats what its figures rest on
 * @param judged what there was to judge
 * @param turns how often it was run, with one fault after the other in turn; 1 where none were tried so
 * @param breaches what did not hold, in the order of the rules
 */
public record RunOutcome(
        String run, long seed, String digest, List<String> caveats, Judged judged, int turns, List<Breach> breaches) {

    /**
     * How much there was to judge.
     *
     * @param panels that were updated, where budgets were asked for; all, where recovery or silence was
     * @param controls that were moved, where budgets or controls were asked for
     * @param segments that had a whole round of polls, where a cycle was asked for
     * @param boards that have controls, where these must be known in time
     */
    public record Judged(int panels, int controls, int segments, int boards) {
        boolean isNothing() {
            return panels + controls + segments + boards == 0;
        }

        /** The most of both. */
        Judged or(Judged other) {
            return new Judged(
                    Math.max(panels, other.panels),
                    Math.max(controls, other.controls),
                    Math.max(segments, other.segments),
                    Math.max(boards, other.boards));
        }
    }

    public RunOutcome {
        caveats = List.copyOf(caveats);
        breaches = List.copyOf(breaches);
    }

    /** What became of a run with several faults in turn; its digest is that of all of theirs. */
    public RunOutcome and(RunOutcome other) {
        List<Breach> all = new ArrayList<>(breaches);
        all.addAll(other.breaches);
        long both = Digest.combine(Long.parseUnsignedLong(digest, 16), Long.parseUnsignedLong(other.digest, 16));
        return new RunOutcome(
                run,
                seed,
                HexFormat.of().toHexDigits(both),
                caveats,
                judged.or(other.judged),
                turns + other.turns,
                all);
    }

    /** Undecided where there was nothing to judge: that is no success. */
    public Outcome outcome() {
        if (!breaches.isEmpty()) {
            return Outcome.FAIL;
        }
        return judged.isNothing() ? Outcome.UNDECIDED : Outcome.PASS;
    }
}
