package dropline.harness.fault;

import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import org.jspecify.annotations.Nullable;

/** Notes what is wrong with one fault's text. */
final class Complaints {
    private final String text;
    private final Problems problems;
    private boolean any;

    Complaints(String text, Problems problems) {
        this.text = text;
        this.problems = problems;
    }

    void add(String key, FaultCode code, String found, @Nullable String expected, @Nullable String fix) {
        any = true;
        problems.add(new Problem("--fault \"" + text + "\"", 0, 0, key, code.name(), found, expected, fix));
    }

    /** Whether anything was wrong so far. */
    boolean any() {
        return any;
    }
}
