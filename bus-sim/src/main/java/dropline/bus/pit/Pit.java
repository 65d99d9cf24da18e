package dropline.bus.pit;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The whole cockpit.
 *
 * @param name for people
 * @param statePeriodNanos the host's state period, ns; 0 where every row of the recording is a state
 * @param load a described load to simulate in place of a recording, if any
 * @param signals in the order under which the rest of the description numbers them
 * @param segments in the order in which their traces are merged
 * @param hubs what stands between the host and segments; a segment that hangs on none has an adapter of its own
 * @param supplies what feeds it, and through which wires
 */
public record Pit(
        String name,
        long statePeriodNanos,
        @Nullable Load load,
        List<Signal> signals,
        List<Segment> segments,
        List<Hub> hubs,
        SupplyTree supplies) {

    /**
     * A load without a recording: at every period, first at one period, this many signals change, taken in turn.
     *
     * @param periodNanos above 0
     * @param changesPerState 0 or more
     */
    public record Load(long periodNanos, int changesPerState) {
        public Load {
            if (periodNanos <= 0 || changesPerState < 0) {
                throw new IllegalArgumentException("a load needs a period above 0 and changes of at least 0: period="
                        + periodNanos + " changes=" + changesPerState);
            }
        }
    }

    public Pit {
        signals = List.copyOf(signals);
        segments = List.copyOf(segments);
        hubs = List.copyOf(hubs);
        if (statePeriodNanos < 0) {
            throw new IllegalArgumentException("state period must not be negative: nanos=" + statePeriodNanos);
        }
        Set<Integer> placed = new TreeSet<>();
        for (Hub hub : hubs) {
            for (int segment : hub.segments()) {
                if (segment < 0 || segment >= segments.size() || !placed.add(segment)) {
                    throw new IllegalArgumentException(
                            "a hub must name segments there are, each on one hub only: hub=" + hub);
                }
            }
        }
    }

    /** One of whose supplies nothing is said. */
    public Pit(
            String name,
            long statePeriodNanos,
            @Nullable Load load,
            List<Signal> signals,
            List<Segment> segments,
            List<Hub> hubs) {
        this(name, statePeriodNanos, load, signals, segments, hubs, SupplyTree.NONE);
    }

    /** One without hubs. */
    public Pit(String name, long statePeriodNanos, @Nullable Load load, List<Signal> signals, List<Segment> segments) {
        this(name, statePeriodNanos, load, signals, segments, List.of());
    }

    /** The hub a segment hangs on, or null. */
    public @Nullable Hub hubOf(int segment) {
        return hubs.stream()
                .filter(hub -> hub.segments().contains(segment))
                .findFirst()
                .orElse(null);
    }

    /** Time that the program of a segment's hub needs before each frame it sends, ns; 0 where there is none. */
    public long turnNanos(int segment) {
        Hub hub = hubOf(segment);
        return hub == null ? 0 : hub.turnNanos();
    }

    /**
     * The segments that a segment runs with, itself among them, ascending: those of one board share its program and its
     * USB lead, all others share nothing.
     */
    public List<Integer> runsWith(int segment) {
        Hub hub = hubOf(segment);
        return hub == null ? List.of(segment) : hub.segments();
    }

    /** The same with another description of one segment. */
    public Pit with(int segment, Segment description) {
        List<Segment> changed = new ArrayList<>(segments);
        changed.set(segment, description);
        return new Pit(name, statePeriodNanos, load, signals, changed, hubs, supplies);
    }

    /** One segment as a pit of its own; its supplies and its adapter play no part. */
    public Pit alone(int segment) {
        Segment only = segments.get(segment);
        return new Pit(
                name,
                statePeriodNanos,
                null,
                signals,
                List.of(only.with(only.controller().bare())));
    }

    /** The same signals, played likewise, on other segments and hubs. */
    public Pit with(List<Segment> otherSegments, List<Hub> otherHubs) {
        return new Pit(name, statePeriodNanos, load, signals, otherSegments, otherHubs, supplies);
    }

    /** The same on other supplies. */
    public Pit with(SupplyTree otherSupplies) {
        return new Pit(name, statePeriodNanos, load, signals, segments, hubs, otherSupplies);
    }

    /** The same with every node as its profile has it, whatever its program is; itself where no node has one. */
    public Pit modelled() {
        if (segments.stream().flatMap(segment -> segment.nodes().stream()).allMatch(node -> node.program() == null)) {
            return this;
        }
        List<Segment> changed = segments.stream()
                .map(segment -> segment.with(
                        segment.nodes().stream().map(Node::modelled).toList(), segment.cable()))
                .toList();
        return new Pit(name, statePeriodNanos, load, signals, changed, hubs, supplies);
    }

    /** The same with further signals after its own. */
    public Pit withFurther(List<Signal> further) {
        List<Signal> all = new ArrayList<>(signals);
        all.addAll(further);
        return new Pit(name, statePeriodNanos, load, all, segments, hubs, supplies);
    }
}
