package dropline.harness.verdict;

/** What a rule came to. */
public enum Outcome {
    PASS,
    FAIL,
    /** Nothing happened that could be judged. */
    UNDECIDED;

    /** The outcome of both: a failure counts before something undecided, that before a pass. */
    public Outcome and(Outcome other) {
        if (this == FAIL || other == FAIL) {
            return FAIL;
        }
        return this == UNDECIDED || other == UNDECIDED ? UNDECIDED : PASS;
    }
}
