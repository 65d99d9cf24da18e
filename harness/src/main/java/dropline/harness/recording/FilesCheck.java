package dropline.harness.recording;

import dropline.harness.problem.Problem;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.TimeUnit;

/** Whether a recording and a file of controls' moves can be taken together. */
final class FilesCheck {
    /** Spans as far apart as neighbouring units of time, give or take a half either way. */
    private static final double LEAST = 500;

    private static final double MOST = 2000;

    private FilesCheck() {}

    /**
     * From when to when a file reaches.
     *
     * @param unit in which its times stand; empty for the compact form
     */
    private record Reach(long firstNanos, long lastNanos, Optional<TimeUnit> unit) {
        double span() {
            return (double) lastNanos - firstNanos;
        }

        String text() {
            return RecordingProblems.seconds(firstNanos) + " to " + RecordingProblems.seconds(lastNanos)
                    + unit.map(u -> ", its times taken for " + word(u)).orElse("");
        }

        private static String word(TimeUnit unit) {
            return switch (unit) {
                case SECONDS -> "s";
                case MILLISECONDS -> "ms";
                case MICROSECONDS -> "us";
                default -> "ns";
            };
        }
    }

    /** The second file must bring nothing but moves, and of no control that the first moves too. */
    static void mustBeMoves(RecordingFiles files, RecordingReader states, RecordingReader moves)
            throws RecordingException {
        String file = String.valueOf(files.controls());
        if (!moves.columns().isEmpty()) {
            List<String> names =
                    moves.columns().stream().map(RecordingColumn::name).toList();
            throw RecordingProblems.one(RecordingProblems.notOnlyControls(file, moves.namesLine(), names));
        }
        List<Problem> problems = new ArrayList<>();
        for (String control : moves.controls()) {
            if (states.controls().contains(control)) {
                problems.add(RecordingProblems.movedTwice(file, control, files.states()));
            }
        }
        if (!problems.isEmpty()) {
            throw new RecordingException(problems);
        }
    }

    static void mustAgree(RecordingFiles files, Path controls, ReadOptions options) throws IOException {
        Reach states = reach(files.states(), options);
        Reach moves = reach(controls, options.byHeader());
        Problem problem = null;
        if (differ(states, moves)) {
            problem = RecordingProblems.unitsDisagree(
                    controls.toString(), moves.text(), files.states() + ": " + states.text());
        } else if (moves.firstNanos() > states.lastNanos() || moves.lastNanos() < states.firstNanos()) {
            problem = RecordingProblems.timesApart(
                    controls.toString(), moves.text(), files.states() + ": " + states.text());
        }
        if (problem != null) {
            throw RecordingProblems.one(problem);
        }
    }

    /**
     * Whether the times look as if they stood in different units: one file lasts some thousand or million times as long
     * as the other. Moves that only last much shorter may be few and early, if the units are the same.
     */
    private static boolean differ(Reach states, Reach moves) {
        boolean longer = isUnitApart(moves.span() / states.span());
        boolean shorter = isUnitApart(states.span() / moves.span());
        return longer || (shorter && !states.unit().equals(moves.unit()));
    }

    private static boolean isUnitApart(double ratio) {
        double thousands = ratio / 1000;
        return (ratio >= LEAST && ratio <= MOST) || (thousands >= LEAST && thousands <= MOST);
    }

    private static Reach reach(Path file, ReadOptions options) throws IOException {
        OptionalLong end = CompactEnd.lastNanos(file);
        RecordingBlock block = new RecordingBlock();
        try (RecordingReader reader = RecordingReader.open(file, options)) {
            if (!reader.read(block)) {
                throw RecordingProblems.one(RecordingProblems.empty(file.toString()));
            }
            long first = first(block);
            long last = end.orElse(last(block));
            while (end.isEmpty() && reader.read(block)) {
                last = last(block);
            }
            return new Reach(first, last, reader.timeUnit());
        }
    }

    private static long first(RecordingBlock block) {
        long row = block.rows() > 0 ? block.rowNanos(0) : Long.MAX_VALUE;
        return block.moves() > 0 ? Math.min(row, block.moveNanos(0)) : row;
    }

    private static long last(RecordingBlock block) {
        long row = block.rows() > 0 ? block.rowNanos(block.rows() - 1) : Long.MIN_VALUE;
        return block.moves() > 0 ? Math.max(row, block.moveNanos(block.moves() - 1)) : row;
    }
}
