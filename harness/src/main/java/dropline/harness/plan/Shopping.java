package dropline.harness.plan;

import dropline.bus.copper.Pair;
import dropline.bus.copper.Span;
import dropline.bus.pit.Cable;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.SupplyTree;
import dropline.bus.supply.Feeds;
import dropline.bus.supply.Flow;
import dropline.bus.supply.Loads;
import dropline.bus.supply.State;
import dropline.bus.supply.SupplyRule;
import dropline.harness.plan.ShoppingList.Amps;
import dropline.harness.plan.ShoppingList.Item;
import dropline.harness.plan.ShoppingList.PairLength;
import dropline.harness.plan.ShoppingList.Ports;
import dropline.harness.plan.ShoppingList.WireLength;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Adds up what a plan takes. */
final class Shopping {
    private final Pit before;
    private final Pit planned;

    Shopping(Pit before, Pit planned) {
        this.before = before;
        this.planned = planned;
    }

    ShoppingList list() {
        Map<String, Integer> boards = new LinkedHashMap<>();
        Map<String, Integer> transceivers = new LinkedHashMap<>();
        Map<String, Integer> adapters = new LinkedHashMap<>();
        for (Segment segment : planned.segments()) {
            for (Node node : segment.nodes()) {
                if (isPlanned(node)) {
                    boards.merge(node.fitting().board(), 1, Integer::sum);
                    if (segment.isShared()) {
                        transceivers.merge(node.fitting().pairLoad().name(), 1, Integer::sum);
                    }
                }
            }
            if (isFurther(segment)) {
                transceivers.merge(segment.cable().fitted().controller().name(), 1, Integer::sum);
                if (segment.controller().kind() == Controller.Kind.HOST) {
                    adapters.merge(segment.controller().adapter().name(), 1, Integer::sum);
                }
            }
        }
        return new ShoppingList(
                items(boards), items(transceivers), items(adapters), cable(), wire(), supplies(), ports());
    }

    private static boolean isPlanned(Node node) {
        return !node.panels().isEmpty()
                && node.panels().stream().allMatch(panel -> panel.status() == Panel.Status.PLANNED);
    }

    private boolean isFurther(Segment segment) {
        return before.segments().stream().noneMatch(now -> now.name().equals(segment.name()));
    }

    private static List<Item> items(Map<String, Integer> counts) {
        List<Item> items = new ArrayList<>();
        counts.forEach((kind, count) -> items.add(new Item(kind, count)));
        return items;
    }

    private List<PairLength> cable() {
        List<PairLength> lengths = new ArrayList<>();
        for (int s = 0; s < planned.segments().size(); s++) {
            Segment segment = planned.segments().get(s);
            double metres = 0;
            int unknown = 0;
            for (Pair pair : Pair.of(planned, s)) {
                List<Double> all = new ArrayList<>();
                pair.spans().forEach(span -> all.add(span.metres()));
                pair.stops().stream()
                        .filter(stop -> stop != Cable.CONTROLLER)
                        .forEach(stop -> all.add(stub(segment, stop)));
                metres += all.stream()
                        .filter(length -> !length.isNaN())
                        .mapToDouble(length -> length)
                        .sum();
                unknown += (int) pair.spans().stream()
                        .map(Span::metres)
                        .filter(m -> Double.isNaN(m))
                        .count();
            }
            if (segment.isShared()) {
                lengths.add(new PairLength(segment.name(), metres, unknown));
            }
        }
        return lengths;
    }

    private static double stub(Segment segment, int stop) {
        double own = segment.nodes().get(stop).fitting().reach().stubMetres();
        return Double.isNaN(own) ? segment.cable().wire().stubMetres() : own;
    }

    private List<WireLength> wire() {
        Map<String, Double> metres = new LinkedHashMap<>();
        for (SupplyTree.Run run : planned.supplies().runs()) {
            metres.merge(run.gauge().name(), 2 * run.metres(), Double::sum);
        }
        List<WireLength> lengths = new ArrayList<>();
        metres.forEach((gauge, length) -> lengths.add(new WireLength(gauge, length)));
        return lengths;
    }

    private List<Amps> supplies() {
        Layout layout = Layout.of(planned);
        Feeds feeds = new Feeds(planned, Feeds.WIRE_CELSIUS);
        List<Amps> amps = new ArrayList<>();
        for (int s = 0; s < planned.supplies().supplies().size(); s++) {
            double most = 0;
            int unknown = 0;
            for (State state : State.values()) {
                Loads loads = Loads.of(layout, state);
                Flow flow = feeds.solve(loads);
                most = state.lasts() && flow.stands(s) ? Math.max(most, flow.amps(s)) : most;
                unknown = Math.max(unknown, unknown(layout, feeds, loads, s));
            }
            amps.add(new Amps(planned.supplies().name(s), most, most / SupplyRule.OF_RATING, unknown));
        }
        return amps;
    }

    private static int unknown(Layout layout, Feeds feeds, Loads loads, int supply) {
        int unknown = 0;
        for (int node = 0; node < layout.nodes().size(); node++) {
            unknown += feeds.supply(node) == supply ? loads.unknown(node) : 0;
        }
        return unknown;
    }

    private List<Ports> ports() {
        List<Ports> ports = new ArrayList<>();
        for (Hub hub : planned.hubs()) {
            int used = 0;
            for (int segment : hub.segments()) {
                used += hub.kind() == Hub.Kind.BOARD
                        ? 1
                        : planned.segments().get(segment).cable().arms().size();
            }
            ports.add(new Ports(hub.name(), used));
        }
        return ports;
    }
}
