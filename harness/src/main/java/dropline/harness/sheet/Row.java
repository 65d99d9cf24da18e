package dropline.harness.sheet;

import dropline.bus.pit.Panel;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One panel as a row of the spreadsheet describes it. Empty cells leave things empty.
 *
 * @param line line of the file, from 1
 * @param panel its name
 * @param place where it is mounted
 * @param segment the segment it is on
 * @param address its board's address, 1..247
 * @param board the board, as the cell calls it
 * @param shows its indicators
 * @param controls its controls
 * @param drawsAmps what it draws from its supply, A
 * @param status how far it has come
 * @param notes cells of other columns, as {@code head: text}
 */
public record Row(
        int line,
        String panel,
        String place,
        String segment,
        OptionalInt address,
        String board,
        List<Part> shows,
        List<Part> controls,
        OptionalDouble drawsAmps,
        Panel.Status status,
        List<String> notes) {
    /** Rows without a segment of one place go together, as do those without either. */
    public String segmentOrPlace() {
        return segment.isEmpty() ? place : segment;
    }

    public Row {
        shows = List.copyOf(shows);
        controls = List.copyOf(controls);
        notes = List.copyOf(notes);
    }
}
