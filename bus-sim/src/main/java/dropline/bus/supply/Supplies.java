package dropline.bus.supply;

import dropline.bus.pit.Cable.Topology;
import dropline.bus.pit.Inlet;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.SupplyTree;
import dropline.bus.pit.SupplyTree.Location;
import dropline.bus.pit.SupplyTree.Supply;
import dropline.bus.rule.Rule;
import dropline.bus.rule.Ruling;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Judges the supplies of a pit, each rule by the worst there is on each supply. */
public final class Supplies {
    private final Pit pit;
    private final Layout layout;
    private final Feeds feeds;
    private final Map<State, Flow> flows = new EnumMap<>(State.class);
    private final Loads counts;

    private Supplies(Pit pit) {
        this.pit = pit;
        layout = Layout.of(pit);
        feeds = new Feeds(pit, Feeds.WIRE_CELSIUS);
        for (State state : State.values()) {
            flows.put(state, feeds.solve(Loads.of(layout, state)));
        }
        counts = Loads.of(layout, State.LAMP_TEST);
    }

    /** What every rule came to on every supply; nothing where a pit describes no supplies. */
    public static List<Ruling> rule(Pit pit) {
        if (pit.supplies().isEmpty()) {
            return List.of();
        }
        Supplies supplies = new Supplies(pit);
        List<Ruling> rulings = new ArrayList<>();
        for (int s = 0; s < pit.supplies().supplies().size(); s++) {
            rulings.addAll(supplies.on(s));
        }
        return rulings;
    }

    /**
     * By how much the return wires lift each node's ground above its supply's in a state, V, by node in the order of
     * {@link Layout#nodes()}; NaN for one on no supply, or whose supply collapses.
     */
    public static double[] groundVolts(Pit pit, State state) {
        Layout layout = Layout.of(pit);
        Feeds feeds = new Feeds(pit, Feeds.WIRE_CELSIUS);
        Flow flow = feeds.solve(Loads.of(layout, state));
        return IntStream.range(0, layout.nodes().size())
                .mapToDouble(node ->
                        feeds.point(node) == SupplyTree.NOWHERE ? Double.NaN : flow.groundVolts(feeds.point(node)))
                .toArray();
    }

    /** Whether a node is tied to an external supply and to USB, with nothing to keep the two apart. */
    public static boolean isBackFed(Pit pit, Layout.NodePlace place) {
        SupplyTree tree = pit.supplies();
        int point = tree.point(place.node().fitting().supply());
        Inlet inlet = place.node().fitting().inlet();
        boolean direct = pit.segments().get(place.segment()).cable().topology() == Topology.DIRECT;
        return point != SupplyTree.NOWHERE
                && tree.supplies().get(tree.supplyOf(point)).location() == Location.EXTERNAL
                && (inlet.usb() || direct)
                && !inlet.isolated();
    }

    private List<Ruling> on(int supply) {
        List<Integer> nodes = IntStream.range(0, layout.nodes().size())
                .filter(node -> feeds.supply(node) == supply)
                .boxed()
                .toList();
        List<Ruling> rulings = new ArrayList<>();
        if (!nodes.isEmpty()) {
            rulings.add(brownOut(supply, nodes));
            rulings.add(amps(SupplyRule.STARTING, supply, nodes, 1));
            rulings.add(amps(SupplyRule.RUNNING, supply, nodes, SupplyRule.OF_RATING));
            rulings.add(drop(supply, nodes));
            rulings.add(heat(supply, nodes));
            rulings.add(backFeed(supply, nodes));
        }
        return rulings;
    }

    /** The worst there was so far of what a rule looks at. */
    private static final class Worst {
        private final Rule rule;
        private double value = Double.NaN;
        private double limit = Double.NaN;
        private String where = "";

        Worst(Rule rule) {
            this.rule = rule;
        }

        void see(double seen, double seenLimit, String at) {
            double over = rule.sense() == Rule.Sense.AT_MOST ? seen - seenLimit : seenLimit - seen;
            double most = rule.sense() == Rule.Sense.AT_MOST ? value - limit : limit - value;
            if (Double.isNaN(value) || over > most) {
                value = seen;
                limit = seenLimit;
                where = at;
            }
        }
    }

    /** What breaks a rule without what nobody stated breaks it with that too; what holds may not. */
    private Ruling judged(Worst worst, int supply, List<Integer> nodes, String basis, @Nullable String missing) {
        String where = worst.where.isEmpty() ? name(supply) : worst.where;
        if (!Double.isNaN(worst.value)) {
            Ruling ruling = Ruling.of(worst.rule, where, worst.value, worst.limit, basis);
            if (ruling.standing() == Ruling.Standing.BROKEN) {
                return ruling;
            }
        }
        String unstated = missing == null ? unstated(nodes) : missing;
        return unstated != null
                ? Ruling.unknown(worst.rule, name(supply), worst.limit, unstated)
                : Ruling.of(worst.rule, where, worst.value, worst.limit, basis);
    }

    private @Nullable String unstated(List<Integer> nodes) {
        int unknown = nodes.stream().mapToInt(counts::unknown).sum();
        int all = nodes.stream().mapToInt(counts::figures).sum();
        return unknown == 0 ? null : unknown + " of " + all + " currents on it are not stated";
    }

    private Ruling brownOut(int supply, List<Integer> nodes) {
        Worst worst = new Worst(SupplyRule.BROWN_OUT);
        int silent = 0;
        for (int node : nodes) {
            double least = node(node).fitting().inlet().worksDownToVolts();
            silent += least == 0 ? 1 : 0;
            for (State state : State.values()) {
                if (least > 0) {
                    Flow flow = flow(state);
                    worst.see(flow.nodeVolts(node), least, at(node, state));
                }
            }
        }
        String missing = silent == 0 ? null : silent + " of its " + nodes.size() + " boards do not say works-down-to";
        return judged(worst, supply, nodes, wires(supply), missing);
    }

    private Ruling amps(SupplyRule rule, int supply, List<Integer> nodes, double share) {
        double rating = supply(supply).ratingAmps();
        Worst worst = new Worst(rule);
        for (State state : State.values()) {
            Flow flow = flow(state);
            if (state.lasts() == (rule == SupplyRule.RUNNING) && flow.stands(supply) && rating > 0) {
                worst.see(flow.amps(supply), rating * share, name(supply) + ", " + state.when());
            }
        }
        boolean collapses = flows.values().stream().anyMatch(flow -> !flow.stands(supply));
        String missing = rating == 0 ? "its rating is not stated" : collapses ? "it collapses" : null;
        return judged(worst, supply, nodes, "currents as stated; charging capacitors not counted", missing);
    }

    private Ruling drop(int supply, List<Integer> nodes) {
        double nominal = supply(supply).volts();
        Worst worst = new Worst(SupplyRule.DROP);
        for (int node : nodes) {
            for (State state : State.values()) {
                if (state.lasts()) {
                    double lost = 1 - flow(state).nodeVolts(node) / nominal;
                    worst.see(lost, SupplyRule.MOST_DROP, at(node, state));
                }
            }
        }
        return judged(worst, supply, nodes, wires(supply), null);
    }

    private Ruling heat(int supply, List<Integer> nodes) {
        Worst worst = new Worst(SupplyRule.HEAT);
        for (int node : nodes) {
            for (State state : State.values()) {
                if (state.lasts()) {
                    worst.see(flow(state).regulatorWatts(node), SupplyRule.MOST_WATTS, at(node, state));
                }
            }
        }
        return judged(worst, supply, nodes, "input volts less output volts, times the current passed on", null);
    }

    private Ruling backFeed(int supply, List<Integer> nodes) {
        List<Integer> fed = nodes.stream()
                .filter(node -> isBackFed(pit, layout.nodes().get(node)))
                .toList();
        String where = fed.isEmpty()
                ? name(supply)
                : name(supply) + ", " + node(fed.get(0)).name()
                        + (fed.size() > 1 ? " and " + (fed.size() - 1) + " more" : "");
        return Ruling.of(SupplyRule.BACK_FEED, where, fed.size(), 0, "what the pit file says of usb and isolated");
    }

    private String at(int node, State state) {
        return node(node).name() + ", " + state.when();
    }

    private String wires(int supply) {
        boolean bare = pit.supplies().fedFrom(supply).isEmpty();
        return bare
                ? "no run of wire is described, so none is lost on the way"
                : "copper at " + Math.round(Feeds.WIRE_CELSIUS) + " degC, there and back; currents as stated";
    }

    private Flow flow(State state) {
        Flow flow = flows.get(state);
        if (flow == null) {
            throw new AssertionError("every state was solved: state=" + state);
        }
        return flow;
    }

    private Supply supply(int index) {
        return pit.supplies().supplies().get(index);
    }

    private String name(int supply) {
        return supply(supply).name();
    }

    private Node node(int index) {
        return layout.nodes().get(index).node();
    }
}
