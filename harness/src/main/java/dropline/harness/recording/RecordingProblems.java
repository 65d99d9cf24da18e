package dropline.harness.recording;

import dropline.bus.pit.Signal;
import dropline.harness.problem.Nearest;
import dropline.harness.problem.Problem;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What can be wrong with a recording as a whole, in words. */
final class RecordingProblems {
    private RecordingProblems() {}

    static RecordingException one(Problem problem) {
        return new RecordingException(List.of(problem));
    }

    static Problem empty(String file) {
        return file(
                file,
                "NO_ROWS",
                "no row and no control's move",
                "at least one row of states",
                "look at what wrote the recording");
    }

    static Problem emptyFile(String file) {
        return file(
                file,
                "EMPTY_FILE",
                "0 bytes",
                "a recording: CSV, JSON lines or Dropline's compact form, plain or gzip",
                null);
    }

    static Problem notARecording(String file, String found) {
        return file(
                file,
                "NOT_A_RECORDING",
                found,
                "CSV, JSON lines or Dropline's compact form, plain or gzip",
                "name the recording itself");
    }

    static Problem jsonList(String file) {
        return file(
                file,
                "NOT_A_RECORDING",
                "a JSON list of objects",
                "JSON lines: each object on a line of its own, without brackets and commas between",
                "write each object on a line of its own");
    }

    static Problem damagedPacking(String file, String found) {
        return file(
                file, "DAMAGED_GZIP", found, "gzip data that unpacks (RFC 1952)", "copy or export the recording again");
    }

    static Problem damagedHeader(String file, String found) {
        return file(
                file,
                "DAMAGED_HEADER",
                found,
                "the header of a compact recording, whole",
                "copy or convert the recording again; without its header it cannot be read");
    }

    static Problem unknownVersion(String file, int version) {
        return file(
                file,
                "UNKNOWN_VERSION",
                "version " + version,
                "version " + CompactFormat.VERSION,
                "use the version of Dropline that wrote it, or a newer one");
    }

    static Problem damagedBlock(String file, long block, long offset, String found) {
        return file(
                file,
                "DAMAGED_BLOCK",
                "block " + block + ", at byte " + offset + ": " + found,
                "a block as it was written",
                "copy the recording again, or read it with --lenient, which leaves the block out");
    }

    static Problem unknownColumn(String file, int line, Signal signal, List<String> columns) {
        String fix = Nearest.to(signal.column(), columns)
                .map(near -> "did you mean " + near + "? Set column: " + near + " at the signal in the pit file")
                .orElse("record this column, or name another one at the signal in the pit file");
        String found =
                columns.size() == 1 ? "1 column, not of this name" : columns.size() + " columns, none of this name";
        String expected = "the column of the pit's signal " + signal.name();
        return new Problem(file, line, 0, signal.column(), "UNKNOWN_COLUMN", found, expected, fix);
    }

    static Problem otherUnit(String file, int line, Signal signal, ColumnUnit recorded, ColumnUnit expected) {
        double offset = recorded.offsetTo(expected);
        String scale = "scale: " + LineProblems.number(rounded(recorded.scaleTo(expected)))
                + (offset == 0 ? "" : ", offset: " + LineProblems.number(rounded(offset)));
        return new Problem(
                file,
                line,
                0,
                signal.column(),
                "UNITS_DISAGREE",
                recorded.word() + ", by the column's name",
                expected.word() + ", the unit of the pit's signal " + signal.name(),
                "write " + scale + " at the signal in the pit file, or state the signal in " + recorded.word()
                        + "; if the name is wrong, rename the column");
    }

    static Problem notOnlyControls(String file, int line, List<String> names) {
        return new Problem(
                file,
                line,
                0,
                "",
                "NOT_ONLY_CONTROLS",
                (names.size() == 1 ? "a signal: " : names.size() + " signals: ")
                        + LineProblems.shortened(String.join(", ", names)),
                "nothing but controls' moves: columns time, control and value",
                "call the column of names control, or write control: before each name");
    }

    static Problem movedTwice(String file, String control, Path states) {
        return new Problem(
                file,
                0,
                0,
                CsvHeader.CONTROL + control,
                "DUPLICATE_NAME",
                "moves of this control in both files",
                "each control in one of them",
                "leave it out here or in " + states);
    }

    static Problem unknownControl(String file, String control, List<String> controls) {
        return new Problem(
                file,
                0,
                0,
                CsvHeader.CONTROL + control,
                "UNKNOWN_CONTROL",
                "a control that the pit does not have",
                controls.isEmpty() ? "a pit with controls" : "one of the pit's " + controls.size(),
                Nearest.to(control, controls)
                        .map(near -> "did you mean " + near + "?")
                        .orElse("name it as the pit file does, or leave its moves out"));
    }

    static Problem unitsDisagree(String file, String moves, String states) {
        return new Problem(
                file,
                0,
                0,
                "time",
                "UNITS_DISAGREE",
                moves,
                "about as long as " + states,
                "name the unit in the heading of each: time_s, time_ms, time_us; Dropline does not guess");
    }

    static Problem timesApart(String file, String moves, String states) {
        return new Problem(
                file,
                0,
                0,
                "time",
                "TIMES_APART",
                moves,
                "times that overlap with " + states,
                "record both by one clock, and name the unit in each heading: time_s, time_ms, time_us");
    }

    /** To six digits. */
    private static double rounded(double value) {
        return new BigDecimal(value).round(new MathContext(6)).doubleValue();
    }

    static Problem beginsAfterEnd(String file, long fromNanos, long lastNanos) {
        return file(
                file,
                "BEGINS_AFTER_END",
                "begin at " + seconds(fromNanos),
                "a time up to " + seconds(lastNanos) + ", where the recording ends",
                "choose an earlier time to begin at");
    }

    static Problem unknownEnding(String file) {
        return file(
                file,
                "UNKNOWN_ENDING",
                file,
                "a name ending in .dlr, .csv, .long.csv or .jsonl, or one of these with .gz behind",
                "the ending says in which form to write");
    }

    static Problem changed(String file, String name) {
        return file(
                file,
                "CHANGED_WHILE_READ",
                "the new name " + name,
                "a recording that is complete; this form is read twice, first for its names",
                "wait until it is written, or read a copy");
    }

    static Problem sameFile(String file) {
        return file(file, "SAME_FILE", "input and output are one file", "two files", "give the output another name");
    }

    static Problem more(String file, long more) {
        return file(
                file,
                "MORE_PROBLEMS",
                "and " + more + " more",
                null,
                "mend these first, or read with --lenient, which skips bad rows and counts them");
    }

    /** What was lost with the end of a packed text. */
    static String cutLine(long line) {
        return "The packed recording was cut off before its end: line " + line
                + " is the last of which anything is left, and was dropped.";
    }

    /** What was lost where the rest could not be taken apart. */
    static String noCsvFrom(long line, String reason) {
        return "From line " + line + " on it is no CSV and was left out: " + reason + ".";
    }

    /** A time as seconds with as few decimals as it needs. */
    static String seconds(long nanos) {
        StringBuilder text = new StringBuilder();
        Decimals.appendSeconds(text, nanos);
        return text.append(" s").toString();
    }

    private static Problem file(
            String file, String code, String found, @Nullable String expected, @Nullable String fix) {
        return new Problem(file, 0, 0, "", code, found, expected, fix);
    }
}
