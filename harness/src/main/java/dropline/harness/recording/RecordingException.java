package dropline.harness.recording;

import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import java.io.IOException;
import java.util.List;

/** A recording is wrong; carries all problems found, for the person who made it. */
public final class RecordingException extends IOException {
    private static final long serialVersionUID = 1L;

    private final transient List<Problem> problems;

    RecordingException(List<Problem> problems) {
        super(Problems.text(problems));
        this.problems = List.copyOf(problems);
    }

    /** What is wrong, at least one; the last may say that there are more. */
    public List<Problem> problems() {
        return problems;
    }
}
