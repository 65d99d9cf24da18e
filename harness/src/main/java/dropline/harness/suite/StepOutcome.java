package dropline.harness.suite;

import dropline.harness.verdict.Outcome;
import java.util.List;

/**
 * What became of a step of a suite that is not a run.
 *
 * @param step its name
 * @param standing what it came to
 * @param checked what was looked at, for people
 * @param words what is wrong, or why it was not run
 */
public record StepOutcome(String step, Standing standing, String checked, List<String> words) {

    /** What a step can come to. */
    public enum Standing {
        PASS,
        FAIL,
        UNDECIDED,
        /** Something it needs was not there: it neither holds nor fails. */
        NOT_RUN
    }

    public StepOutcome {
        words = List.copyOf(words);
    }

    /** Whether it was run and holds. */
    public boolean holds() {
        return standing == Standing.PASS;
    }

    static Standing of(Outcome outcome) {
        return Standing.valueOf(outcome.name());
    }
}
