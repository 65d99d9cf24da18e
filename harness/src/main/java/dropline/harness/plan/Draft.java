package dropline.harness.plan;

import dropline.bus.bound.Obstacle;
import dropline.bus.bound.WorstCase;
import dropline.bus.copper.Pair;
import dropline.bus.pit.Cable;
import dropline.bus.pit.Cable.Topology;
import dropline.bus.pit.Fitted;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.plan.AtBaud;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Describes segments, and the pit, as they would be under a plan. */
final class Draft {
    private static final long ROUND_NANOS = 10_000;

    private final Pit pit;
    private final Boards boards;

    Draft(Pit pit, Boards boards) {
        this.pit = pit;
        this.boards = boards;
    }

    /** A group's segment alone, with the hub board that polls it. */
    Pit alone(Group group, Settings settings) {
        return alone(
                group,
                segment(group, settings, pit.segments().get(group.segment()).name()));
    }

    private Pit alone(Group group, Segment segment) {
        Hub hub = pit.hubOf(group.segment());
        return pit.with(List.of(segment), hub == null ? List.of() : List.of(hub.with(List.of(0))));
    }

    /** A group's segment under a name. */
    Segment segment(Group group, Settings settings, String name) {
        Segment like = pit.segments().get(group.segment());
        List<Node> nodes = nodes(group, settings);
        Segment at = new Segment(
                name,
                settings.baud(),
                like.format(),
                like.protocol(),
                like.controller().with(settings.state()),
                nodes,
                like.biased(),
                cable(group, like, nodes));
        Segment timed = at.with(at.controller().withTimeOut(timeOutNanos(group, settings, at)));
        boolean comes = group.boards().stream().anyMatch(board -> boards.moves(board, group));
        return comes ? timed.with(timed.controller().withTimeOut(longEnoughNanos(group, timed))) : timed;
    }

    /** A time-out that the slowest reply of those that come is within. */
    private long longEnoughNanos(Group group, Segment timed) {
        List<@Nullable Obstacle> obstacles =
                WorstCase.of(alone(group, timed), 0, WorstCase.NONE).obstacles();
        long longEnough = timed.controller().timeOutNanos();
        for (int at = 0; at < obstacles.size(); at++) {
            Obstacle obstacle = obstacles.get(at);
            boolean late = obstacle != null
                    && (obstacle.kind() == Obstacle.Kind.LATE_REPLY || obstacle.kind() == Obstacle.Kind.LATE_ADAPTER);
            if (late && obstacle.node() == at && boards.moves(group.boards().get(at), group)) {
                longEnough = Math.max(longEnough, rounded(obstacle.nanos()));
            }
        }
        return longEnough;
    }

    private static long rounded(long nanos) {
        return (nanos + ROUND_NANOS - 1) / ROUND_NANOS * ROUND_NANOS;
    }

    /** What a segment has, grown or shrunk with the longest reply where its rate changes. */
    private long timeOutNanos(Group group, Settings settings, Segment at) {
        Segment like = pit.segments().get(group.segment());
        long written = like.controller().timeOutNanos();
        if (settings.baud() == like.baud()) {
            return written;
        }
        Segment before = new Segment(
                at.name(),
                like.baud(),
                at.format(),
                at.protocol(),
                at.controller().withTimeOut(written),
                at.nodes(),
                at.biased(),
                at.cable());
        Pit after = AtBaud.of(pit.with(List.of(before), List.of()), 0, settings.baud());
        long scaled = after.segments().get(0).controller().timeOutNanos();
        return rounded(scaled);
    }

    private List<Node> nodes(Group group, Settings settings) {
        Map<Integer, Integer> addresses = addresses(group);
        Map<Integer, Integer> weights = Weights.of(boards.of(group), settings);
        List<Node> nodes = new ArrayList<>();
        for (Board board : boards.of(group)) {
            boolean same = pit.segments().get(board.segment()).baud() == settings.baud();
            Node node = board.node();
            nodes.add(node.at(
                    addresses.getOrDefault(board.number(), node.address()),
                    weights.getOrDefault(board.number(), node.weight()),
                    same ? node.profile() : node.profile().at(settings.baud())));
        }
        return nodes;
    }

    /** Those that stay keep theirs; whoever comes keeps its own if nobody has it, else takes the least that is free. */
    private Map<Integer, Integer> addresses(Group group) {
        Map<Integer, Integer> addresses = new LinkedHashMap<>();
        List<Board> coming = new ArrayList<>();
        for (Board board : boards.of(group)) {
            if (boards.moves(board.number(), group)) {
                coming.add(board);
            } else {
                addresses.put(board.number(), board.node().address());
            }
        }
        for (Board board : List.copyOf(coming)) {
            if (!addresses.containsValue(board.node().address())) {
                addresses.put(board.number(), board.node().address());
                coming.remove(board);
            }
        }
        int free = 1;
        for (Board board : coming) {
            while (addresses.containsValue(free)) {
                free++;
            }
            addresses.put(board.number(), free);
        }
        return addresses;
    }

    /** Those that stay as they are, then those that come; resistors move to the new ends. */
    private Cable cable(Group group, Segment like, List<Node> nodes) {
        if (isUntouched(group, like)) {
            return like.cable();
        }
        Cable unfitted = like.cable().with(arms(group, like), Fitted.UNSTATED);
        return like.cable().with(unfitted.arms(), fitted(group, like, like.with(nodes, unfitted)));
    }

    private boolean isUntouched(Group group, Segment like) {
        List<String> here =
                boards.of(group).stream().map(board -> board.node().name()).toList();
        return !group.further()
                && here.equals(like.nodes().stream().map(Node::name).toList());
    }

    private List<Cable.Arm> arms(Group group, Segment like) {
        Map<String, List<Integer>> arms = new LinkedHashMap<>();
        List<Integer> left = new ArrayList<>();
        for (int at = 0; at < group.boards().size(); at++) {
            left.add(at);
        }
        if (!group.further()) {
            for (Cable.Arm arm : like.cable().arms()) {
                List<Integer> stops = new ArrayList<>();
                for (int stop : arm.stops()) {
                    int at = stop == Cable.CONTROLLER
                            ? stop
                            : position(group, like.nodes().get(stop));
                    if (stop == Cable.CONTROLLER || at >= 0) {
                        stops.add(at);
                        left.remove((Integer) at);
                    }
                }
                arms.put(arm.name(), stops);
            }
        }
        if (like.cable().topology() == Topology.CHAIN) {
            arms.computeIfAbsent("", name -> new ArrayList<>(List.of(Cable.CONTROLLER)))
                    .addAll(left);
        } else {
            left.forEach(at -> armOf(group.boards().get(at), arms).add(at));
        }
        return arms.entrySet().stream()
                .filter(arm -> !arm.getValue().isEmpty())
                .map(arm -> new Cable.Arm(arm.getKey(), arm.getValue()))
                .toList();
    }

    /** An arm of the name of the one it is on, else the one with fewest boards. */
    private List<Integer> armOf(int board, Map<String, List<Integer>> arms) {
        String own = armName(boards.get(board));
        if (!own.isEmpty() || arms.isEmpty()) {
            return arms.computeIfAbsent(own.isEmpty() ? "1" : own, name -> new ArrayList<>());
        }
        List<Integer> fewest = arms.values().iterator().next();
        for (List<Integer> arm : arms.values()) {
            fewest = arm.size() < fewest.size() ? arm : fewest;
        }
        return fewest;
    }

    /** The arm of a star that a board is on now; empty in a chain. */
    private String armName(Board board) {
        Segment segment = pit.segments().get(board.segment());
        int position = segment.nodes().indexOf(board.node());
        return segment.cable().arms().stream()
                .filter(arm -> arm.stops().contains(position))
                .findFirst()
                .map(Cable.Arm::name)
                .orElse("");
    }

    private int position(Group group, Node node) {
        List<Board> here = boards.of(group);
        for (int at = 0; at < here.size(); at++) {
            if (here.get(at).node().name().equals(node.name())) {
                return at;
            }
        }
        return -1;
    }

    private boolean stays(Group group, Segment like, int stop) {
        return !group.further() && position(group, like.nodes().get(stop)) >= 0;
    }

    private Fitted fitted(Group group, Segment like, Segment unfitted) {
        Fitted before = like.cable().fitted();
        Fitted.Terminators terminators = before.terminators();
        if (terminators.stated() && !terminators.at().isEmpty()) {
            List<Integer> ends = Pair.of(alone(group, unfitted), 0).stream()
                    .flatMap(pair -> pair.ends().stream())
                    .distinct()
                    .filter(end -> end == Cable.CONTROLLER
                            || unfitted.nodes().get(end).fitting().pairLoad().terminatorOhms() == 0)
                    .toList();
            terminators = new Fitted.Terminators(true, ends, terminators.ohms());
        }
        Fitted.BiasResistors bias = before.bias();
        if (bias.stated() && !bias.at().isEmpty()) {
            List<Integer> staying = bias.at().stream()
                    .filter(stop -> stop == Cable.CONTROLLER || stays(group, like, stop))
                    .map(stop -> stop == Cable.CONTROLLER
                            ? stop
                            : position(group, like.nodes().get(stop)))
                    .toList();
            bias = new Fitted.BiasResistors(
                    true, staying.isEmpty() ? List.of(Cable.CONTROLLER) : staying, bias.ohms(), bias.volts());
        }
        return new Fitted(before.controller(), terminators, bias);
    }
}
