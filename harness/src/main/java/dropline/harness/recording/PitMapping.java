package dropline.harness.recording;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import dropline.harness.problem.Problem;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Which column feeds which signal, and which recorded control is which of the pit's. */
final class PitMapping {
    private final int[] columnOfSignal;
    private final int[] controlOfRecorded;
    private final int unusedColumns;
    private final int unusedControls;

    private PitMapping(int[] columnOfSignal, int[] controlOfRecorded, int unusedColumns, int unusedControls) {
        this.columnOfSignal = columnOfSignal;
        this.controlOfRecorded = controlOfRecorded;
        this.unusedColumns = unusedColumns;
        this.unusedControls = unusedControls;
    }

    static PitMapping of(RecordingFiles files, RecordingReader reader, Pit pit) throws RecordingException {
        String file = files.states().toString();
        List<String> names =
                reader.columns().stream().map(RecordingColumn::name).toList();
        Map<String, Integer> byName = new HashMap<>();
        for (int i = 0; i < names.size(); i++) {
            byName.putIfAbsent(names.get(i), i);
        }
        List<Problem> problems = new ArrayList<>();
        Set<Integer> used = new HashSet<>();
        int[] columnOfSignal = new int[pit.signals().size()];
        for (int i = 0; i < columnOfSignal.length; i++) {
            Signal signal = pit.signals().get(i);
            Integer column = byName.get(signal.column());
            if (column == null) {
                problems.add(RecordingProblems.unknownColumn(file, reader.namesLine(), signal, names));
            } else {
                columnOfSignal[i] = column;
                used.add(column);
                checkUnit(file, reader.namesLine(), signal).ifPresent(problems::add);
            }
        }
        int[] controls = controls(reader.controls(), pit);
        if (reader instanceof MergedReader merged) {
            problems.addAll(unknownControls(String.valueOf(files.controls()), merged.addedControls(), pit));
        }
        if (!problems.isEmpty()) {
            throw new RecordingException(problems);
        }
        int unusedControls = 0;
        for (int control : controls) {
            unusedControls += control < 0 ? 1 : 0;
        }
        return new PitMapping(columnOfSignal, controls, names.size() - used.size(), unusedControls);
    }

    /** The recording's column for a signal of the pit. */
    int column(int signal) {
        return columnOfSignal[signal];
    }

    /** The pit's control for one of the recording's; -1 if the pit has none of its name. */
    int control(int recorded) {
        return controlOfRecorded[recorded];
    }

    int unusedColumns() {
        return unusedColumns;
    }

    int unusedControls() {
        return unusedControls;
    }

    /** A column whose name says another unit than the signal's, unless the signal is scaled. */
    private static Optional<Problem> checkUnit(String file, int line, Signal signal) {
        if (signal.scale() != 1 || signal.offset() != 0) {
            return Optional.empty();
        }
        Optional<ColumnUnit> recorded = ColumnUnit.of(signal.column()).map(ColumnUnit.InName::unit);
        Optional<ColumnUnit> expected = ColumnUnit.named(signal.unit());
        return recorded.isPresent() && expected.isPresent() && recorded.get().disagreesWith(expected.get())
                ? Optional.of(RecordingProblems.otherUnit(file, line, signal, recorded.get(), expected.get()))
                : Optional.empty();
    }

    /** A file of nothing but moves is there for this pit's controls. */
    private static List<Problem> unknownControls(String file, List<String> added, Pit pit) {
        List<String> names = Layout.of(pit).controls().stream()
                .map(place -> place.control().name())
                .toList();
        return added.stream()
                .filter(name -> !names.contains(name))
                .map(name -> RecordingProblems.unknownControl(file, name, names))
                .toList();
    }

    private static int[] controls(List<String> recorded, Pit pit) {
        Map<String, Integer> byName = new HashMap<>();
        List<Layout.ControlPlace> places = Layout.of(pit).controls();
        for (int i = 0; i < places.size(); i++) {
            byName.put(places.get(i).control().name(), i);
        }
        return recorded.stream().mapToInt(name -> byName.getOrDefault(name, -1)).toArray();
    }
}
