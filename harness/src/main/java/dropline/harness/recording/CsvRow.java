package dropline.harness.recording;

import dropline.harness.problem.Problem;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** One line of a wide CSV, taken apart; reused line after line. */
final class CsvRow {
    long line;
    int fields;
    boolean blank;
    boolean extraFields;
    boolean timed;
    long nanos;
    String time = "";
    boolean stated;
    boolean moved;
    final double[] values;
    final int[] positions;
    final boolean[] positioned;
    final List<Problem> problems = new ArrayList<>();

    CsvRow(int columns, int controls) {
        values = new double[columns];
        positions = new int[controls];
        positioned = new boolean[controls];
    }

    void clear(long atLine) {
        line = atLine;
        fields = 0;
        blank = true;
        extraFields = false;
        timed = false;
        stated = false;
        moved = false;
        Arrays.fill(values, Double.NaN);
        Arrays.fill(positioned, false);
        problems.clear();
    }
}
