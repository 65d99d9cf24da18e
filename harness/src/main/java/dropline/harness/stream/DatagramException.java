package dropline.harness.stream;

import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import java.util.List;

/** A datagram file is wrong; carries all problems found. */
public final class DatagramException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<Problem> problems;

    DatagramException(List<Problem> problems) {
        super(Problems.text(problems));
        this.problems = List.copyOf(problems);
    }

    /** At least one. */
    public List<Problem> problems() {
        return problems;
    }
}
