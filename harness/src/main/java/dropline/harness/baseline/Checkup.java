package dropline.harness.baseline;

import dropline.harness.suite.RunOutcome;
import dropline.harness.suite.StepOutcome;
import dropline.harness.verdict.Outcome;
import dropline.harness.verdict.RestsOn;
import java.util.List;

/**
 * Everything that a check of a suite found.
 *
 * @param suite its name
 * @param runs what became of every run with every seed, in the order of the suite
 * @param steps what else was to be checked
 * @param standings how the runs stand against the accepted ones
 * @param restsOn where the pit's figures come from
 */
public record Checkup(
        String suite, List<RunOutcome> runs, List<StepOutcome> steps, Standings standings, RestsOn restsOn) {

    /**
     * How runs stand against the accepted ones.
     *
     * @param compared whether there are any
     * @param notes what could not be compared, or must be said besides, a sentence each
     * @param deviations what is no more as it was
     * @param comparable whether all could be compared
     */
    public record Standings(boolean compared, List<String> notes, List<Deviation> deviations, boolean comparable) {
        /** Nothing was accepted. */
        public static final Standings NONE = new Standings(false, List.of(), List.of(), true);

        public Standings {
            notes = List.copyOf(notes);
            deviations = List.copyOf(deviations);
        }

        /** Whether nothing is worse or gone, and all could be compared. */
        public boolean isWell() {
            return comparable && deviations.stream().noneMatch(Deviation::isBad);
        }
    }

    /**
     * What has changed in the pit file, and what of it is behind what is worse.
     *
     * @param changes all of them, in the order of the files
     * @param explained the worst of each run, with its cause
     */
    public record Reasons(List<PitChange> changes, List<Explained> explained) {
        public Reasons {
            changes = List.copyOf(changes);
            explained = List.copyOf(explained);
        }
    }

    /** Something worse, and what is behind it. */
    public record Explained(Deviation deviation, Why.Cause cause) {}

    public Checkup {
        runs = List.copyOf(runs);
        steps = List.copyOf(steps);
    }

    /** Whether everything that was checked holds, something was, and nothing is worse than accepted. */
    public boolean passes() {
        return verdict() == Outcome.PASS;
    }

    /** What all of it came to, the accepted runs included. */
    public Outcome verdict() {
        return standings.isWell() ? outcome() : Outcome.FAIL;
    }

    /** What runs and steps came to, the accepted runs aside. */
    private Outcome outcome() {
        boolean broken = runs.stream().anyMatch(run -> run.outcome() == Outcome.FAIL)
                || steps.stream().anyMatch(step -> step.standing() == StepOutcome.Standing.FAIL);
        if (broken) {
            return Outcome.FAIL;
        }
        boolean open = runs.stream().anyMatch(run -> run.outcome() == Outcome.UNDECIDED)
                || steps.stream().anyMatch(step -> step.standing() == StepOutcome.Standing.UNDECIDED);
        boolean any = !runs.isEmpty() || steps.stream().anyMatch(StepOutcome::holds);
        return open || !any ? Outcome.UNDECIDED : Outcome.PASS;
    }
}
