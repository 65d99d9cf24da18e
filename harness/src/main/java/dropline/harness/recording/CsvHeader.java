package dropline.harness.recording;

import dropline.harness.problem.Problem;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * The first line of a wide CSV: time, then a column per signal; a name that begins with {@code control:} is that
 * control's. A field without a name is passed over.
 *
 * @param line in which it stands
 * @param columns the states' columns
 * @param controls the controls' names
 * @param fields what stands in each field: 0..n-1 a column, -1..-m a control, {@link #NOTHING}; the first is time's
 * @param unit the unit of time
 */
record CsvHeader(int line, List<RecordingColumn> columns, List<String> controls, List<Integer> fields, TimeUnit unit) {
    /** What the name of a control's column begins with. */
    static final String CONTROL = "control:";

    /** A field that is passed over. */
    static final int NOTHING = Integer.MIN_VALUE;

    CsvHeader {
        columns = List.copyOf(columns);
        controls = List.copyOf(controls);
        fields = List.copyOf(fields);
    }

    /**
     * Understands a header.
     *
     * @param starts where each name begins in its line, counted from 1
     * @param told the unit of time a person told, over what the header says
     * @throws RecordingException with all that is wrong with it
     */
    static CsvHeader of(String file, long line, List<String> names, List<Integer> starts, @Nullable TimeUnit told)
            throws RecordingException {
        List<Problem> problems = new ArrayList<>();
        LineProblems at = new LineProblems(file);
        if (names.stream().skip(1).allMatch(String::isBlank)) {
            throw RecordingProblems.one(at.noColumns(line, names));
        }
        if (names.stream().allMatch(CsvHeader::looksLikeANumber)) {
            throw RecordingProblems.one(at.noHeader(line, names));
        }
        List<RecordingColumn> columns = new ArrayList<>();
        List<String> controls = new ArrayList<>();
        List<Integer> fields = new ArrayList<>(List.of(NOTHING));
        Map<String, Integer> seen = new HashMap<>();
        for (int i = 1; i < names.size(); i++) {
            String name = names.get(i).strip();
            String control =
                    name.startsWith(CONTROL) ? name.substring(CONTROL.length()).strip() : "";
            Integer first = seen.putIfAbsent(control.isEmpty() ? name : CONTROL + control, i);
            if (name.isEmpty()) {
                fields.add(NOTHING);
            } else if (first != null) {
                problems.add(at.duplicate(line, starts.get(i), name, i + 1, first + 1));
            } else if (!control.isEmpty()) {
                controls.add(control);
                fields.add(-controls.size());
            } else {
                fields.add(columns.size());
                columns.add(new RecordingColumn(name, RecordingColumn.AS_IS));
            }
        }
        if (columns.size() + controls.size() > CompactFormat.MOST_COLUMNS) {
            problems.add(at.tooManyColumns(line, columns.size() + controls.size()));
        }
        if (!problems.isEmpty()) {
            throw new RecordingException(problems);
        }
        TimeUnit named = TimeHeader.unit(names.get(0));
        TimeUnit unit = told != null ? told : named != null ? named : TimeUnit.SECONDS;
        return new CsvHeader((int) Math.min(line, Integer.MAX_VALUE), columns, controls, fields, unit);
    }

    private static boolean looksLikeANumber(String name) {
        String text = name.strip();
        CellParser parser = new CellParser();
        return parser.parse(text.toCharArray(), 0, text.length()) == CellParser.Kind.NUMBER;
    }
}
