package dropline.harness.cli;

/** What the process ends with. */
final class ExitCode {
    /** Every verdict is a pass, or nothing was judged. */
    static final int PASS = 0;

    /** Something fails or is undecided. */
    static final int FAIL = 1;

    /** A file or the command itself is wrong. */
    static final int WRONG_INPUT = 2;

    /** Our own fault. */
    static final int OUR_FAULT = 3;

    private ExitCode() {}
}
