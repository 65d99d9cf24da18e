package dropline.harness.size;

import dropline.bus.pit.Budget;
import dropline.bus.pit.Cable;
import dropline.bus.pit.Control;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Adds panels to a segment, each on a further board of its own: a copy of the board that carries the original, at the
 * next free address. A copy shows signals of its own that change whenever the original's do, and its controls are moved
 * whenever the original's are: a further panel rarely shows what another shows already, and copies that shared their
 * signals would cost no state at all.
 */
public final class Growth {
    private final Pit pit;
    private final int segment;
    private final List<Node> further;

    /**
     * @param segment index of the segment that grows
     * @param further boards to add, taken in turn, each with the panel to copy; at least one
     */
    public Growth(Pit pit, int segment, List<Node> further) {
        if (further.isEmpty()) {
            throw new IllegalArgumentException("growth needs a board to add: further=0");
        }
        this.pit = pit;
        this.segment = segment;
        this.further = List.copyOf(further);
    }

    /** The panels of a segment that count, each on a board like the one that carries it now. */
    static List<Node> panelsOf(Segment segment, Aside aside) {
        List<Node> boards = new ArrayList<>();
        for (Node node : segment.nodes()) {
            node.panels().stream()
                    .filter(panel -> !aside.isOut(panel))
                    .forEach(panel -> boards.add(alone(node, panel)));
        }
        return boards;
    }

    /** A board of the pit with just one panel, as it would stand on a segment. */
    public static Node board(Pit pit, int segment, Node node, Panel panel) {
        Segment there = pit.segments().get(segment);
        Node alone = alone(node, panel);
        return there.nodes().stream().anyMatch(own -> own.name().equals(node.name()))
                ? alone
                : alone.with(alone.profile().at(there.baud()), alone.panels());
    }

    private static Node alone(Node node, Panel panel) {
        return node.with(node.profile(), List.of(panel));
    }

    /** The pit before it grows. */
    Pit pit() {
        return pit;
    }

    int segment() {
        return segment;
    }

    /** How many addresses are left for further boards; 0 on a direct segment, which has room for one board only. */
    int most() {
        Segment grows = pit.segments().get(segment);
        return grows.isShared() ? FreeNumbers.ofAddresses(grows).left() : 0;
    }

    /** The same panels added to another description of the same pit, as that describes them. */
    Growth of(Pit other) {
        return new Growth(
                other,
                segment,
                further.stream().map(board -> likeIn(other, board)).toList());
    }

    private Node likeIn(Pit other, Node board) {
        Panel panel = board.panels().get(0);
        for (int s = 0; s < other.segments().size(); s++) {
            for (Node node : other.segments().get(s).nodes()) {
                if (node.name().equals(board.name())) {
                    Panel same = node.panels().stream()
                            .filter(there -> there.name().equals(panel.name()))
                            .findFirst()
                            .orElse(panel);
                    int baud = other.segments().get(segment).baud();
                    return board.with(
                            s == segment ? node.profile() : node.profile().at(baud), List.of(same));
                }
            }
        }
        return board;
    }

    /** The pit with so many panels more, 0 or more. */
    Grown by(int count) {
        return new Growing().by(count);
    }

    /** One pit on its way. */
    private final class Growing {
        private final List<Signal> signals = new ArrayList<>();
        private final List<List<Integer>> signalCopies = new ArrayList<>();
        private final Map<String, List<String>> controlCopies = new LinkedHashMap<>();
        private final FreeNumbers numbers = FreeNumbers.of(pit);
        private final FreeNumbers addresses =
                FreeNumbers.ofAddresses(pit.segments().get(segment));
        private final Layout layout = Layout.of(pit);

        Growing() {
            for (int signal = 0; signal < pit.signals().size(); signal++) {
                signalCopies.add(new ArrayList<>(List.of(signal)));
            }
            layout.controls()
                    .forEach(place -> controlCopies.put(
                            place.control().name(),
                            new ArrayList<>(List.of(place.control().name()))));
        }

        Grown by(int count) {
            Segment grows = pit.segments().get(segment);
            List<Node> nodes = new ArrayList<>(grows.nodes());
            for (int i = 0; i < count; i++) {
                Node original = further.get(i % further.size());
                nodes.add(copy(original, i / further.size() + 1));
            }
            Pit grown = pit.withFurther(signals).with(segment, grows.with(nodes, cable(grows, nodes.size())));
            return new Grown(grown, segment, count, new Mirror(signalCopies, controls(grown)));
        }

        /** {@code turn} counts the copies of one panel, from 1. */
        private Node copy(Node original, int turn) {
            Panel panel = original.panels().get(0);
            String name = copyOf(panel.name(), turn);
            Map<Integer, Integer> own = new LinkedHashMap<>();
            List<Indicator> indicators = new ArrayList<>();
            for (Indicator indicator : panel.indicators()) {
                List<Integer> shown = new ArrayList<>();
                for (int signal : indicator.signals()) {
                    shown.add(own.computeIfAbsent(signal, first -> copySignal(first, name)));
                }
                indicators.add(showing(indicator, shown));
            }
            List<Control> controls = new ArrayList<>();
            for (Control control : panel.controls()) {
                String copied = copyOf(control.name(), turn);
                controlCopies.computeIfPresent(control.name(), (same, copies) -> {
                    copies.add(copied);
                    return copies;
                });
                controls.add(named(control, copied));
            }
            Budget budget = panel.budget();
            Panel copied =
                    new Panel(name, panel.place(), Panel.Status.PLANNED, indicators, controls, budget, panel.draws());
            List<Node.Register> registers = original.registers().stream()
                    .filter(register -> own.containsKey(register.signal()))
                    .map(register ->
                            new Node.Register(Objects.requireNonNull(own.get(register.signal())), register.address()))
                    .toList();
            return new Node(
                    "board of " + name,
                    addresses.next(1),
                    original.weight(),
                    original.profile(),
                    List.of(copied),
                    registers,
                    original.fitting());
        }

        private int copySignal(int original, String panel) {
            Signal signal = pit.signals().get(original);
            int index = pit.signals().size() + signals.size();
            signals.add(new Signal(
                    signal.name() + " of " + panel,
                    signal.unit(),
                    signal.min(),
                    signal.max(),
                    signal.resolution(),
                    signal.wraps(),
                    signal.column(),
                    signal.scale(),
                    signal.offset(),
                    numbers.next((signal.valueBytes() + 1) / 2)));
            signalCopies.get(original).add(index);
            return index;
        }

        private List<List<Integer>> controls(Pit grown) {
            Map<String, Integer> index = new LinkedHashMap<>();
            List<Layout.ControlPlace> places = Layout.of(grown).controls();
            for (int i = 0; i < places.size(); i++) {
                index.put(places.get(i).control().name(), i);
            }
            List<List<Integer>> copies = new ArrayList<>();
            for (Layout.ControlPlace place : layout.controls()) {
                copies.add(
                        Objects.requireNonNull(controlCopies.get(place.control().name())).stream()
                                .map(index::get)
                                .toList());
            }
            return copies;
        }
    }

    private static String copyOf(String name, int turn) {
        return name + ", copy " + turn;
    }

    private static Indicator showing(Indicator indicator, List<Integer> signals) {
        return new Indicator(
                indicator.name(),
                indicator.kind(),
                signals,
                indicator.delayNanos(),
                indicator.refreshEveryNanos(),
                indicator.refreshTakesNanos(),
                indicator.blocks(),
                indicator.motion(),
                indicator.glow());
    }

    private static Control named(Control control, String name) {
        return new Control(
                name,
                control.kind(),
                control.number(),
                control.debounceNanos(),
                control.bounceNanos(),
                control.deadBand(),
                control.positions(),
                control.matrix(),
                control.detents());
    }

    /** The further boards come after the last, on the last arm of a star. */
    private static Cable cable(Segment segment, int nodes) {
        List<Cable.Arm> arms = new ArrayList<>(segment.cable().arms());
        Cable.Arm last = arms.get(arms.size() - 1);
        List<Integer> stops = new ArrayList<>(last.stops());
        for (int node = segment.nodes().size(); node < nodes; node++) {
            stops.add(node);
        }
        arms.set(arms.size() - 1, new Cable.Arm(last.name(), stops));
        return new Cable(segment.cable().topology(), arms);
    }
}
