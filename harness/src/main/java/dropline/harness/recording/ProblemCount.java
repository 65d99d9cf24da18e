package dropline.harness.recording;

import dropline.harness.problem.Problem;
import java.util.ArrayList;
import java.util.List;

/** What is wrong with the lines of one recording: the first are kept, the rest is only counted. */
final class ProblemCount {
    /** Problems listed before the rest is only counted. */
    private static final int MOST = 20;

    private final String file;
    private final List<Problem> found = new ArrayList<>();
    private long more;

    ProblemCount(String file) {
        this.file = file;
    }

    boolean isEmpty() {
        return found.isEmpty();
    }

    void note(Problem problem) {
        if (found.size() < MOST) {
            found.add(problem);
        } else {
            more++;
        }
    }

    /** At the end of the recording: throws what has been noted, if anything has. */
    void mustBeEmpty() throws RecordingException {
        if (found.isEmpty()) {
            return;
        }
        List<Problem> all = new ArrayList<>(found);
        if (more > 0) {
            all.add(RecordingProblems.more(file, more));
        }
        throw new RecordingException(all);
    }
}
