package dropline.harness.suite;

/** What can be wrong with a suite file beside its keys, its paths and the texts of its faults. */
enum SuiteCode {
    CONFLICT("two keys exclude each other"),
    DUPLICATE_SEED("a seed stands twice"),
    NO_LOAD("the pit describes no load that could be run"),
    NOT_JUDGEABLE("what must hold could not be judged"),
    STRIKES_NOTHING("a fault can strike nothing in this pit");

    private final String words;

    SuiteCode(String words) {
        this.words = words;
    }

    /** What it means, in a few words. */
    String words() {
        return words;
    }
}
