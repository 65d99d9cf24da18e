package dropline.harness.yaml;

import dropline.harness.problem.Nearest;
import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Notes the problems of one pit file, and of those it includes, at their places. */
public final class Report {
    private static final int MOST_NAMES = 12;

    private final Problems problems = new Problems();

    /** A problem with what stands at {@code tree}. */
    public void at(Tree tree, String key, Enum<?> code, @Nullable String expected, @Nullable String fix) {
        at(tree, key, code, tree.found(), expected, fix);
    }

    /** A problem at {@code tree}, with other words for what was found. */
    public void at(
            Tree tree,
            String key,
            Enum<?> code,
            @Nullable String found,
            @Nullable String expected,
            @Nullable String fix) {
        at(tree.place(), key, code, found, expected, fix);
    }

    public void at(
            Place place,
            String key,
            Enum<?> code,
            @Nullable String found,
            @Nullable String expected,
            @Nullable String fix) {
        problems.add(new Problem(place.file(), place.line(), place.column(), key, code.name(), found, expected, fix));
    }

    /** A name that nothing has; suggests the nearest. */
    public void unknownName(Tree.Scalar name, String key, String what, Collection<String> known) {
        Optional<String> nearest = Nearest.to(name.text(), known);
        at(
                name,
                key,
                YamlCode.UNKNOWN_NAME,
                known.isEmpty() ? "the name of " + what + "; there is none yet" : what + ": " + oneOf(known),
                nearest.map(n -> "write " + key + ": " + n)
                        .orElse("add " + what + " of this name, or correct the name"));
    }

    /** A problem noted elsewhere. */
    public void add(Problem problem) {
        problems.add(problem);
    }

    public boolean isEmpty() {
        return problems.isEmpty();
    }

    public List<Problem> list() {
        return problems.list();
    }

    /** Names in a row, for a person. */
    public static String oneOf(Collection<String> names) {
        String row = String.join(", ", names.stream().limit(MOST_NAMES).toList());
        return names.size() > MOST_NAMES ? row + " and " + (names.size() - MOST_NAMES) + " more" : row;
    }
}
