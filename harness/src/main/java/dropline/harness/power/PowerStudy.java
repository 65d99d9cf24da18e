package dropline.harness.power;

import dropline.bus.pit.Draw;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.SupplyTree;
import dropline.bus.pit.SupplyTree.Run;
import dropline.bus.pit.SupplyTree.Supply;
import dropline.bus.supply.Feeds;
import dropline.bus.supply.Flow;
import dropline.bus.supply.Loads;
import dropline.bus.supply.State;
import dropline.bus.supply.Supplies;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Looks at the supplies of a pit in every state, without playing anything. */
public final class PowerStudy {
    private final Pit pit;
    private final SupplyTree tree;
    private final Layout layout;
    private final Feeds feeds;
    private final Map<State, Flow> flows = new EnumMap<>(State.class);

    private PowerStudy(Pit pit) {
        this.pit = pit;
        tree = pit.supplies();
        layout = Layout.of(pit);
        feeds = new Feeds(pit, Feeds.WIRE_CELSIUS);
        for (State state : State.values()) {
            flows.put(state, feeds.solve(Loads.of(layout, state)));
        }
    }

    /** What the supplies come to, without power-up or recording. The pit must describe some. */
    public static PowerResult of(Pit pit) {
        return new PowerStudy(pit).result();
    }

    private PowerResult result() {
        List<PowerResult.Point> points = new ArrayList<>();
        for (int s = 0; s < tree.supplies().size(); s++) {
            add(s, 0, points);
        }
        List<PowerResult.Board> boards = IntStream.range(0, layout.nodes().size())
                .filter(node -> feeds.point(node) != SupplyTree.NOWHERE)
                .mapToObj(this::board)
                .toList();
        return new PowerResult(
                pit.name(),
                points,
                boards,
                layout.nodes().size() - boards.size(),
                Supplies.rule(pit),
                figures(),
                Zones.of(pit),
                Zones.traffic(pit),
                null,
                null);
    }

    private void add(int point, int depth, List<PowerResult.Point> points) {
        points.add(point(point, depth));
        tree.fedFrom(point).forEach(fed -> add(fed, depth + 1, points));
    }

    private PowerResult.Point point(int point, int depth) {
        int boards = (int) IntStream.range(0, layout.nodes().size())
                .filter(node -> feeds.point(node) == point)
                .count();
        List<Double> amps =
                Stream.of(State.values()).map(state -> flow(state).amps(point)).toList();
        if (depth == 0) {
            Supply supply = tree.supplies().get(point);
            return new PowerResult.Point(
                    point, supply.name(), 0, supply.volts(), supply.ratingAmps(), "", 0, 0, boards, amps);
        }
        Run run = tree.runs().get(point - tree.supplies().size());
        return new PowerResult.Point(
                point, run.name(), depth, 0, 0, run.gauge().name(), run.metres(), feeds.ohms(point), boards, amps);
    }

    private PowerResult.Board board(int index) {
        Node node = layout.nodes().get(index).node();
        State when = Stream.of(State.values())
                .min(Comparator.comparingDouble(state -> flow(state).nodeVolts(index)))
                .orElseThrow();
        double lift = flows.values().stream()
                .mapToDouble(flow -> flow.groundVolts(feeds.point(index)))
                .max()
                .orElseThrow();
        double watts = Stream.of(State.values())
                .filter(State::lasts)
                .mapToDouble(state -> flow(state).regulatorWatts(index))
                .max()
                .orElseThrow();
        return new PowerResult.Board(
                index,
                node.name(),
                tree.name(feeds.supply(index)),
                tree.name(feeds.point(index)),
                flow(when).nodeVolts(index),
                when,
                node.fitting().inlet().worksDownToVolts(),
                lift,
                watts,
                Supplies.isBackFed(pit, layout.nodes().get(index)));
    }

    /** Of the boards, and of panels or, where a panel states nothing, of its indicators; those on a supply. */
    private PowerResult.Figures figures() {
        int stated = 0;
        int guessed = 0;
        int unknown = 0;
        for (int n = 0; n < layout.nodes().size(); n++) {
            if (feeds.point(n) != SupplyTree.NOWHERE) {
                for (Draw draw : draws(layout.nodes().get(n).node())) {
                    stated += draw.isKnown() && !draw.guessed() ? 1 : 0;
                    guessed += draw.guessed() ? 1 : 0;
                    unknown += draw.isKnown() ? 0 : 1;
                }
            }
        }
        return new PowerResult.Figures(stated, guessed, unknown);
    }

    private static List<Draw> draws(Node node) {
        List<Draw> draws = new ArrayList<>(List.of(node.fitting().draws()));
        for (Panel panel : node.panels()) {
            if (panel.draws().active().isKnown()) {
                draws.add(panel.draws().active());
            } else {
                for (Indicator indicator : panel.indicators()) {
                    draws.add(indicator.draws().active());
                }
            }
        }
        return draws;
    }

    private Flow flow(State state) {
        return Objects.requireNonNull(flows.get(state));
    }
}
