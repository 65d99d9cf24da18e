package dropline.harness.sheet;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A column that a spreadsheet of panels may have, and what its head may be called. */
enum Column {
    PLACE("place", "location", "console", "where", "position", "area"),
    PANEL("panel", "panels", "name", "panel name", "what"),
    SEGMENT("segment", "bus", "line", "pair", "hub port"),
    ADDRESS("address", "addr", "node", "id", "bus address", "node address"),
    BOARD("board", "boards", "mcu", "microcontroller", "chip", "cpu", "controller board"),
    SHOWS("shows", "show", "displays", "display", "indicators", "outputs", "gauges"),
    CONTROLS("controls", "control", "inputs", "switches"),
    DRAWS("draws", "draw", "current", "load", "power", "consumption"),
    STATUS("status", "state", "progress", "stage");

    /** Between bars; the first is the one it is called by. */
    private final String heads;

    Column(String... heads) {
        this.heads = String.join("|", heads);
    }

    /** The head it is called by. */
    String head() {
        return heads().get(0);
    }

    private List<String> heads() {
        return List.of(heads.split("\\|", -1));
    }

    /** The column a head means: without case, and without a unit in brackets behind it. */
    static Optional<Column> of(String head) {
        String plain = head.strip()
                .toLowerCase(Locale.ROOT)
                .replaceAll("\\s*[\\[(].*", "")
                .replaceAll("[_\\s]+", " ")
                .replaceAll(":$", "")
                .strip();
        for (Column column : values()) {
            if (column.heads().contains(plain)) {
                return Optional.of(column);
            }
        }
        return Optional.empty();
    }
}
