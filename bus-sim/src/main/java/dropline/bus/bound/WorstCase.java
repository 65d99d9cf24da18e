package dropline.bus.bound;

import dropline.bus.bound.Bound.Part;
import dropline.bus.bound.Obstacle.Kind;
import dropline.bus.controller.PollPlan;
import dropline.bus.pit.Control;
import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Signal;
import dropline.bus.plan.SegmentWire;
import dropline.protocol.NodeWire;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The longest update and control latencies of one segment while nothing is broken but, perhaps, one node dead: all
 * changes come at once and have just missed their turn, all replies are as late and as long as they can be, and
 * whatever blocks a node does so just then. Nodes go by their position in {@link Segment#nodes()}.
 */
public final class WorstCase {
    /** In place of a node's position: none is dead. */
    public static final int NONE = -1;

    private final Pit pit;
    private final long stateGapNanos;
    private final Timing timing;
    private final List<NodeTimes> nodes;
    private final List<@Nullable Obstacle> obstacles;
    private final @Nullable Obstacle segmentObstacle;
    private final PollTimes polls;
    private final Arrivals arrivals;
    private final @Nullable BroadcastTimes broadcasts;

    private WorstCase(Pit pit, int index, int dead, long stateGapNanos) {
        this.pit = pit;
        this.stateGapNanos = stateGapNanos;
        timing = Timing.of(pit, index);
        Segment segment = timing.segment();
        nodes = segment.nodes().stream()
                .map(node -> NodeTimes.of(pit, timing, node))
                .toList();
        StateFrames all = segment.controller().state() == StateDelivery.BROADCAST ? everyone() : null;
        obstacles = obstacles(new Soundness(timing, nodes, all == null ? 0 : all.longestChars()), dead);
        segmentObstacle = obstacles.stream()
                .filter(obstacle -> obstacle != null && obstacle.kind().isSegments())
                .findFirst()
                .orElse(null);
        polls = new PollTimes(timing, nodes, obstacles, PollPlan.turns(segment.nodes()));
        int values = all == null
                ? nodes.stream().mapToInt(node -> node.state().slots()).sum()
                : all.slots();
        arrivals = Arrivals.of(timing, resends() ? 0 : stateGapNanos, values);
        broadcasts = all == null ? null : new BroadcastTimes(timing, all, arrivals, polls.longestTryNanos());
    }

    /**
     * Of one segment of a pit.
     *
     * @param segment index into {@link Pit#segments()}
     * @param dead position of the node that is dead, or {@link #NONE}
     */
    public static WorstCase of(Pit pit, int segment, int dead) {
        return new WorstCase(pit, segment, dead, pit.statePeriodNanos());
    }

    /**
     * Of one segment of a pit whose states come no faster than this. Where they go out as recorded, a recording's own
     * shortest time between two states makes the bounds closer.
     *
     * @param stateGapNanos from one state to the next, at least, ns; 0 where that is not known
     */
    public static WorstCase of(Pit pit, int segment, int dead, long stateGapNanos) {
        return new WorstCase(pit, segment, dead, Math.max(stateGapNanos, pit.statePeriodNanos()));
    }

    private StateFrames everyone() {
        Segment segment = timing.segment();
        NodeWire all = SegmentWire.all(pit, segment);
        return StateFrames.of(
                segment.protocol(),
                segment.protocol().broadcast(all),
                all.signals().size());
    }

    private List<@Nullable Obstacle> obstacles(Soundness soundness, int dead) {
        List<@Nullable Obstacle> found = new ArrayList<>();
        for (int n = 0; n < nodes.size(); n++) {
            found.add(n == dead ? new Obstacle(Kind.DEAD, n, 0, 0) : soundness.obstacle(nodes.get(n), n));
        }
        return found;
    }

    /** Whether what a node missed is sent again to all. */
    private boolean resends() {
        return timing.segment().protocol().acknowledgesState()
                && obstacles.stream().anyMatch(obstacle -> obstacle != null && obstacle.kind() != Kind.DEAD);
    }

    /** What keeps frames to or from each node from surely arriving, by its position; null for nothing. */
    public List<@Nullable Obstacle> obstacles() {
        return Collections.unmodifiableList(obstacles);
    }

    /** A round of polls, from its first request to that of the next. */
    public Bound cycle() {
        return segmentObstacle != null
                ? Bound.without(segmentObstacle)
                : new Bound(List.of(new Part(Stage.QUEUE, withBroadcasts(polls.round()))), null);
    }

    /** The longest time of one poll of a node with all its tries, to the next frame of the controller, ns. */
    public long transactionNanos(int position) {
        return polls.turnNanos(position);
    }

    /** The update latency of a panel: that of its slowest indicator and signal; null where it shows nothing. */
    public @Nullable Bound update(int position, Panel panel) {
        Bound longest = null;
        for (Indicator indicator : panel.indicators()) {
            for (int signal : indicator.signals()) {
                Bound bound = update(position, indicator, signal);
                longest = longest == null || isLonger(bound, longest) ? bound : longest;
            }
        }
        return longest;
    }

    private static boolean isLonger(Bound one, Bound other) {
        return one.nanos() > other.nanos() || (one.nanos() == other.nanos() && one.sumNanos() > other.sumNanos());
    }

    /** The update latency of one signal on one indicator. {@code signal} is an index into {@link Pit#signals()}. */
    public Bound update(int position, Indicator indicator, int signal) {
        NodeTimes node = nodes.get(position);
        Obstacle obstacle = obstacle(position);
        if (obstacle == null && (broadcasts == null ? node.state().isNone() : broadcasts.isNone())) {
            obstacle = new Obstacle(Kind.NOT_SENT, position, 0, 0);
        }
        if (obstacle != null) {
            return Bound.without(obstacle);
        }
        List<Part> parts = new ArrayList<>();
        parts.add(new Part(Stage.HOST, pit.statePeriodNanos()));
        parts.add(new Part(Stage.ADAPTER, timing.arriveNanos()));
        parts.add(new Part(Stage.QUEUE, broadcasts == null ? addressedWaitNanos(position) : broadcasts.waitNanos()));
        parts.add(new Part(
                Stage.WIRE,
                broadcasts == null
                        ? timing.frame(node.requestChars()) - timing.afterHearingNanos()
                        : broadcasts.wireNanos()));
        parts.add(new Part(Stage.NODE_WAIT, node.waitNanos()));
        long way = parts.stream().mapToLong(Part::nanos).sum();
        return showing(position, indicator, pit.signals().get(signal), parts, way);
    }

    private @Nullable Obstacle obstacle(int position) {
        Obstacle own = obstacles.get(position);
        return own != null && own.kind() == Kind.DEAD ? own : segmentObstacle != null ? segmentObstacle : own;
    }

    /** Until the request that carries a value begins which has just missed one. */
    private long addressedWaitNanos(int position) {
        StateFrames state = nodes.get(position).state();
        long before = -1;
        long wait = 0;
        while (wait != before) {
            before = wait;
            long rounds = state.ahead(arrivals.after(wait)) + 1;
            wait = polls.between(position, rounds).nanos() + timing.prepareNanos();
        }
        return wait;
    }

    /**
     * The device's own part. What must arrive is never seen at a value that is replaced on the way; where states come
     * no faster than it needs, it is overtaken by no more of them than had piled up before it.
     */
    private Bound showing(int position, Indicator indicator, Signal signal, List<Part> parts, long wayNanos) {
        long once = showingNanos(indicator, signal);
        long period = stateGapNanos;
        if (!indicator.kind().mustArrive() || once == 0) {
            parts.add(new Part(Stage.DEVICE, once));
            return new Bound(parts, null);
        }
        if (once >= period) {
            parts.add(new Part(Stage.DEVICE, once));
            return new Bound(parts, new Obstacle(Kind.REPLACED, position, once, period));
        }
        long overtaken = (wayNanos + period - once - 1) / (period - once);
        parts.add(new Part(Stage.DEVICE, (overtaken + 1) * once));
        return new Bound(parts, null);
    }

    private static long showingNanos(Indicator indicator, Signal signal) {
        long turning = indicator.kind() == Indicator.Kind.FLAG
                ? indicator.delayNanos() * signal.steps()
                : Math.max(indicator.glow().riseNanos(), indicator.glow().fallNanos());
        return indicator.startNanos()
                + indicator.refreshEveryNanos()
                + indicator.refreshTakesNanos()
                + turning
                + indicator.motion().longestBrakingNanos();
    }

    /** The control latency of one control, for a move that stands until its node believes it. */
    public Bound control(int position, Control control) {
        Obstacle obstacle = obstacle(position);
        if (obstacle != null) {
            return Bound.without(obstacle);
        }
        NodeTimes node = nodes.get(position);
        long turn = withBroadcasts(polls.between(position, 1));
        return new Bound(
                List.of(
                        new Part(Stage.CONTACT, control.longestBelievingNanos()),
                        new Part(Stage.QUEUE, turn + node.node().profile().enableLeadNanos()),
                        new Part(Stage.WIRE, node.replyNanos()),
                        new Part(Stage.ADAPTER, timing.receiveNanos())),
                null);
    }

    private long withBroadcasts(PollTimes.Span span) {
        return broadcasts == null ? span.nanos() : broadcasts.withPollsNanos(span);
    }
}
