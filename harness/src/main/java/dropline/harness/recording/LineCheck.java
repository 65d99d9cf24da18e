package dropline.harness.recording;

import java.util.HashSet;
import java.util.Set;

/** What every line that names its values is held to, in either pass through the file. */
final class LineCheck {
    private final LineProblems problems;
    private final Set<String> seen = new HashSet<>();
    private long lastNanos = Long.MIN_VALUE;
    private long lastLine;

    LineCheck(LineProblems problems) {
        this.problems = problems;
    }

    /** Whether a line counts; adds to it what else is wrong with it. */
    boolean accepts(NamedLine line) {
        if (line.problems.isEmpty() && !line.timed) {
            line.problems.add(problems.noTime(line.line));
        }
        if (line.problems.isEmpty() && line.nanos < lastNanos) {
            line.problems.add(problems.backwards(line.line, line.time, lastNanos, lastLine));
        }
        checkNames(line);
        if (!line.problems.isEmpty()) {
            return false;
        }
        lastNanos = line.nanos;
        lastLine = line.line;
        return true;
    }

    private void checkNames(NamedLine line) {
        seen.clear();
        for (int i = 0; i < line.count(); i++) {
            String name = line.name(i);
            double value = line.value(i);
            if (!NameBook.isName(name)) {
                line.problems.add(problems.notAName(line.line, line.column(i), LineProblems.shortened(name)));
            } else if (line.count() > 1 && !seen.add(name)) {
                line.problems.add(problems.namedTwice(line.line, line.column(i), name));
            } else if (NameBook.isControl(name) && !Double.isNaN(value) && (int) value != value) {
                String found = LineProblems.number(value);
                line.problems.add(problems.notAPosition(line.line, line.column(i), NameBook.controlName(name), found));
            }
        }
    }
}
