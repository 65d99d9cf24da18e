package dropline.harness.recording;

import dropline.harness.problem.Problem;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The names that a recording's lines bring up, each with its place: 0..n-1 for columns, -1..-m for controls. */
final class NameBook {
    private final Map<String, Integer> places = new HashMap<>();
    private final List<RecordingColumn> columns = new ArrayList<>();
    private final List<String> controls = new ArrayList<>();

    List<RecordingColumn> columns() {
        return List.copyOf(columns);
    }

    List<String> controls() {
        return List.copyOf(controls);
    }

    /** The place of a name; null if it was not learned. */
    @Nullable
    Integer place(String name) {
        return places.get(name);
    }

    /** Learns the names of a line that is right. */
    void learn(NamedLine line, LineProblems problems) throws RecordingException {
        for (int i = 0; i < line.count(); i++) {
            String name = line.name(i);
            if (!places.containsKey(name)) {
                if (isControl(name)) {
                    controls.add(controlName(name));
                    places.put(name, -controls.size());
                } else {
                    places.put(name, columns.size());
                    columns.add(new RecordingColumn(name, RecordingColumn.AS_IS));
                }
            }
        }
        int names = places.size();
        if (names > CompactFormat.MOST_COLUMNS) {
            Problem problem = problems.tooManyColumns(line.line, names);
            throw RecordingProblems.one(problem);
        }
    }

    static boolean isControl(String name) {
        return name.startsWith(CsvHeader.CONTROL);
    }

    static String controlName(String name) {
        return name.substring(CsvHeader.CONTROL.length());
    }

    /** Whether a person could tell the name from others by looking. */
    static boolean isName(String name) {
        String own = isControl(name) ? controlName(name) : name;
        return !own.isBlank() && own.chars().noneMatch(c -> c == '\uFFFD' || Character.isISOControl(c));
    }
}
