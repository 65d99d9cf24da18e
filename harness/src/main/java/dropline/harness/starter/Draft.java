package dropline.harness.starter;

import dropline.bus.pit.Panel;
import dropline.harness.sheet.Part;
import dropline.harness.sheet.Row;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * A pit being drawn up from rows of a spreadsheet: what they leave open is decided here, and noted as a guess, so that
 * the pit can be simulated at once.
 */
final class Draft {
    /** What one reply of Dropline's own frames holds. */
    private static final int MOST_CONTROLS = 16;

    private static final int LAST_ADDRESS = 247;

    private final Map<String, Segment> segments = new LinkedHashMap<>();
    private final Map<String, Shown> signals = new LinkedHashMap<>();
    private final Set<String> panelNames = new LinkedHashSet<>();
    private final Set<String> controlNames = new LinkedHashSet<>();

    /** A segment: its nodes by address, and what about it is a guess. */
    static final class Segment {
        final String name;
        final boolean guessed;
        final List<Board> boards = new ArrayList<>();

        Segment(String name, boolean guessed) {
            this.name = name;
            this.guessed = guessed;
        }

        private @Nullable Board at(int address) {
            return boards.stream()
                    .filter(board -> board.address == address)
                    .findFirst()
                    .orElse(null);
        }

        private int freeAddress(Set<Integer> taken) {
            int address = 1;
            while (taken.contains(address)) {
                address++;
            }
            return address;
        }
    }

    /** A node. */
    static final class Board {
        final String name;
        final int address;
        final boolean addressGuessed;
        final boolean segmentGuessed;
        final String kind;
        final List<DraftPanel> panels = new ArrayList<>();

        Board(String name, int address, boolean addressGuessed, boolean segmentGuessed, String kind) {
            this.name = name;
            this.address = address;
            this.addressGuessed = addressGuessed;
            this.segmentGuessed = segmentGuessed;
            this.kind = kind;
        }

        /** Whether a row can mean the same board: it names no other kind. */
        private boolean canCarry(Row row) {
            return kind.isEmpty() || row.board().isEmpty() || kind.equalsIgnoreCase(row.board());
        }

        private int controls() {
            return panels.stream().mapToInt(panel -> panel.controls().size()).sum();
        }
    }

    /** A panel with its parts. */
    record DraftPanel(String name, Row row, List<Indicator> indicators, List<Control> controls) {}

    /** An indicator: its name, its kind as the pit file has it, whether that is a guess, and the signal it shows. */
    record Indicator(String name, String kind, boolean guessed, String signal) {}

    /** A control: its name, kind, whether that is a guess, and its number on its node. */
    record Control(String name, String kind, boolean guessed, int number) {}

    /** A signal and what it is taken to be. */
    record Shown(String name, SignalGuess guess) {}

    /** @param rows at least one */
    static Draft of(List<Row> rows) {
        Draft draft = new Draft();
        List<Placing.Place> places = Placing.of(rows);
        Map<String, Set<Integer>> taken = new LinkedHashMap<>();
        for (int i = 0; i < rows.size(); i++) {
            Set<Integer> addresses = taken.computeIfAbsent(places.get(i).segment(), s -> new TreeSet<>());
            rows.get(i).address().ifPresent(addresses::add);
        }
        for (int i = 0; i < rows.size(); i++) {
            Placing.Place place = places.get(i);
            draft.place(rows.get(i), place, Objects.requireNonNull(taken.get(place.segment())));
        }
        return draft;
    }

    List<Segment> segments() {
        return List.copyOf(segments.values());
    }

    List<Shown> signals() {
        return List.copyOf(signals.values());
    }

    private void place(Row row, Placing.Place place, Set<Integer> addresses) {
        Segment segment = segments.computeIfAbsent(place.segment(), name -> new Segment(name, place.guessed()));
        List<Part> controls = row.controls();
        int from = 0;
        int part = 0;
        do {
            Board board = boardOf(segment, addresses, row, place.guessed(), part == 0);
            int to = Math.min(controls.size(), from + MOST_CONTROLS - board.controls());
            String wanted = part == 0 ? row.panel() : row.panel() + ", part " + (part + 1);
            String name = unique(panelNames, wanted, row.place());
            List<Indicator> indicators = part == 0 ? indicators(row) : List.of();
            board.panels.add(new DraftPanel(name, row, indicators, controls(board, name, controls.subList(from, to))));
            from = to;
            part++;
        } while (from < controls.size());
    }

    private static Board boardOf(Segment segment, Set<Integer> taken, Row row, boolean guessed, boolean first) {
        Board same =
                first && row.address().isPresent() ? segment.at(row.address().getAsInt()) : null;
        if (same != null && same.canCarry(row)) {
            return same;
        }
        boolean known = first && row.address().isPresent() && same == null;
        int address = known ? row.address().getAsInt() : segment.freeAddress(taken);
        if (address > LAST_ADDRESS) {
            throw new IllegalArgumentException("a segment has 247 addresses: segment=" + segment.name);
        }
        taken.add(address);
        Board board = new Board(segment.name + " " + address, address, !known, guessed, row.board());
        segment.boards.add(board);
        return board;
    }

    private List<Indicator> indicators(Row row) {
        List<Indicator> indicators = new ArrayList<>();
        Set<String> names = new LinkedHashSet<>();
        for (Part part : row.shows()) {
            boolean guessed = part.kind().isEmpty();
            String kind = guessed ? "gauge stepper" : part.kind();
            String signal = part.name().isEmpty() || part.name().matches("\\d+")
                    ? (row.panel() + " " + part.name()).strip()
                    : part.name();
            String name = unique(names, signal.equalsIgnoreCase(row.panel()) ? kind : signal, kind);
            Shown shown = shown(signal, kind);
            // A gauge stepper has stops; what wraps needs something that goes round.
            boolean round = kind.equals("gauge stepper") && shown.guess().wraps();
            indicators.add(new Indicator(name, round ? "stepper" : kind, guessed || round, shown.name()));
        }
        return indicators;
    }

    private Shown shown(String name, String kind) {
        String plain = name.toLowerCase(Locale.ROOT);
        SignalGuess guess =
                switch (kind) {
                    case "lamp", "filament lamp", "flag" -> SignalGuess.ON_OFF;
                    case "backlight zone" -> SignalGuess.BRIGHTNESS;
                    default -> SignalGuess.of(plain);
                };
        Shown known = signals.get(plain);
        if (known != null && !known.guess().equals(SignalGuess.ON_OFF)) {
            return known;
        }
        Shown shown = new Shown(plain, guess);
        signals.put(plain, shown);
        return shown;
    }

    private List<Control> controls(Board board, String panel, List<Part> parts) {
        List<Control> controls = new ArrayList<>();
        int before = board.controls();
        for (Part part : parts) {
            boolean guessed = part.kind().isEmpty();
            String kind = guessed ? "toggle" : part.kind();
            boolean unnamed = part.name().isEmpty() || part.name().matches("\\d+");
            String name = unique(
                    controlNames, unnamed ? (panel + " " + kind + " " + part.name()).strip() : part.name(), panel);
            controls.add(new Control(name, kind, guessed, before + controls.size() + 1));
        }
        return controls;
    }

    /** The name, or, where it is taken, the name with what tells it apart, or with a number. */
    private static String unique(Set<String> names, String wanted, String apart) {
        String name = wanted;
        if (names.contains(name) && !apart.isEmpty()) {
            name = wanted + ", " + apart;
        }
        for (int i = 2; names.contains(name); i++) {
            name = wanted + " " + i;
        }
        names.add(name);
        return name;
    }

    /** Panels that are not planned but have neither an indicator nor a control, in the order of the rows. */
    static boolean isBlank(DraftPanel panel) {
        return panel.indicators().isEmpty()
                && panel.controls().isEmpty()
                && panel.row().status() != Panel.Status.PLANNED;
    }
}
