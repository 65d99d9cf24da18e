package dropline.harness.problem;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** Collects the problems of one file and those it includes, so that a person sees all of them in one go. */
public final class Problems {
    private static final Comparator<Problem> IN_FILE_ORDER =
            Comparator.comparingInt(Problem::line).thenComparingInt(Problem::column);

    private final List<String> files = new ArrayList<>();
    private final List<Problem> found = new ArrayList<>();

    /** Notes a problem; one that says exactly what an earlier one said is dropped. */
    public void add(Problem problem) {
        if (!found.contains(problem)) {
            found.add(problem);
        }
        if (!files.contains(problem.file())) {
            files.add(problem.file());
        }
    }

    public boolean isEmpty() {
        return found.isEmpty();
    }

    /** All of them, file by file in their order; those of the same place in the order in which they were found. */
    public List<Problem> list() {
        Comparator<Problem> byFile = Comparator.comparingInt(problem -> files.indexOf(problem.file()));
        return found.stream().sorted(byFile.thenComparing(IN_FILE_ORDER)).toList();
    }

    /** All of them as text, an empty line between two, an end of line after the last; empty if there are none. */
    public String text() {
        return text(list());
    }

    /** These problems as text, an empty line between two, an end of line after the last; empty if there are none. */
    public static String text(List<Problem> problems) {
        return problems.isEmpty()
                ? ""
                : problems.stream().map(Problem::text).collect(Collectors.joining("\n\n", "", "\n"));
    }
}
