package dropline.harness.describe;

import dropline.bus.pit.Budget;
import dropline.bus.pit.Control;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Motion;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** A pit in words and tables. */
public final class Describe {
    private final Pit pit;

    private Describe(Pit pit) {
        this.pit = pit;
    }

    /** Sentences first, then tables: segments with their nodes, panels, controls, signals. Lines end in {@code \n}. */
    public static String table(Pit pit) {
        return new Describe(pit).text();
    }

    private String text() {
        StringBuilder text = new StringBuilder(summary());
        pit.segments().forEach(segment -> text.append('\n').append(new SegmentText(pit, segment).text()));
        section(text, "Panels", panels());
        section(text, "Controls", controls());
        section(text, "Signals", signals());
        return text.toString();
    }

    private String summary() {
        Layout layout = Layout.of(pit);
        int panels =
                layout.nodes().stream().mapToInt(n -> n.node().panels().size()).sum();
        StringBuilder text = new StringBuilder(pit.name()).append(": ");
        text.append(Figures.count(pit.segments().size(), "segment")).append(", ");
        text.append(Figures.count(layout.nodes().size(), "node")).append(", ");
        text.append(Figures.count(panels, "panel")).append(", ");
        text.append(Figures.count(pit.signals().size(), "signal")).append(", ");
        text.append(Figures.count(layout.controls().size(), "control")).append(".\n");
        text.append(
                pit.statePeriodNanos() == 0
                        ? "The host sends its state as recorded: every row is a state.\n"
                        : "The host sends its state every " + Figures.time(pit.statePeriodNanos()) + ".\n");
        Pit.@Nullable Load load = pit.load();
        if (load != null) {
            text.append("Without a recording: every ")
                    .append(Figures.time(load.periodNanos()))
                    .append(" a state with ");
            text.append(Figures.count(load.changesPerState(), "changed signal")).append(".\n");
        }
        return text.append(unshown(layout)).toString();
    }

    private String unshown(Layout layout) {
        List<String> names = new ArrayList<>();
        for (int s = 0; s < pit.signals().size(); s++) {
            int signal = s;
            if (layout.slots().stream().noneMatch(slot -> slot.signal() == signal)) {
                names.add(pit.signals().get(s).name());
            }
        }
        return names.isEmpty() ? "" : "No panel shows " + String.join(", ", names) + ".\n";
    }

    private static void section(StringBuilder text, String heading, Table table) {
        if (!table.isEmpty()) {
            text.append('\n').append(heading).append("\n\n").append(table.text());
        }
    }

    private void eachPanel(Consumer<Place> consumer) {
        for (Segment segment : pit.segments()) {
            for (Node node : segment.nodes()) {
                node.panels().forEach(panel -> consumer.accept(new Place(node, panel)));
            }
        }
    }

    private record Place(Node node, Panel panel) {}

    private Table panels() {
        Table table = new Table(
                "panel", "node", "place", "status", "shows with", "controls", "update", "control", "budget from");
        eachPanel(place -> {
            Panel panel = place.panel();
            Budget budget = panel.budget();
            table.row(
                    panel.name(),
                    place.node().name(),
                    panel.place(),
                    Figures.words(panel.status()),
                    String.join(
                            ", ", panel.indicators().stream().map(this::shows).toList()),
                    Integer.toString(panel.controls().size()),
                    Figures.time(budget.updateNanos()),
                    Figures.time(budget.controlNanos()),
                    budget.source());
        });
        return table;
    }

    private String shows(Indicator indicator) {
        String kind = Figures.words(indicator.kind());
        int signals = indicator.signals().size();
        return signals == 1
                ? kind + moves(indicator, pit.signals().get(indicator.signals().get(0)))
                : kind + " of " + signals;
    }

    /** What a restart costs, and the smallest move, where they are known. */
    private static String moves(Indicator indicator, Signal signal) {
        Motion motion = indicator.motion();
        List<String> known = new ArrayList<>();
        if (motion.step() > 0) {
            known.add(Figures.number(motion.step()) + " " + signal.unit() + " a step");
        }
        if (motion.zeroing() != Motion.Zeroing.NONE) {
            known.add("zero after up to " + Figures.time(motion.longestZeroingNanos(signal)));
        }
        return known.isEmpty() ? "" : " (" + String.join("; ", known) + ")";
    }

    private static String kind(Control control) {
        String kind = Figures.words(control.kind());
        Control.Matrix matrix = control.matrix();
        if (matrix != null) {
            return kind + " " + matrix.rows() + " x " + matrix.columns() + (matrix.diodes() ? "" : ", no diodes");
        }
        return switch (control.kind()) {
            case SELECTOR -> kind + " of " + control.positions().count();
            case LEVER -> kind + " of " + control.detents().size() + " detents";
            default -> kind;
        };
    }

    private Table controls() {
        Table table = new Table("control", "panel", "node", "kind", "number", "debounce", "bounce");
        eachPanel(place -> {
            for (Control control : place.panel().controls()) {
                table.row(
                        control.name(),
                        place.panel().name(),
                        place.node().name(),
                        kind(control),
                        Integer.toString(control.number()),
                        Figures.time(control.debounceNanos()),
                        Figures.time(control.bounceNanos()));
            }
        });
        return table;
    }

    private Table signals() {
        Table table = new Table("signal", "unit", "range", "resolution", "wraps", "bytes", "number", "column");
        for (Signal signal : pit.signals()) {
            table.row(
                    signal.name(),
                    signal.unit(),
                    Figures.number(signal.min()) + ".." + Figures.number(signal.max()),
                    Figures.number(signal.resolution()),
                    signal.wraps() ? "yes" : "no",
                    Integer.toString(signal.valueBytes()),
                    Integer.toString(signal.number()),
                    signal.column());
        }
        return table;
    }
}
