package dropline.bus.copper;

import dropline.bus.pit.Cable;
import dropline.bus.pit.Cable.Arm;
import dropline.bus.pit.Cable.Topology;
import dropline.bus.pit.Fitting.PairLoad;
import dropline.bus.pit.Hub;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Two wires on which everybody meets, and what belongs on them: a terminator near each end, never more than two, never
 * on a branch (MODBUS over serial line V1.02, 3.4.5); bias resistors at one place (3.4.6). A stop is a position in
 * {@link Segment#nodes()}, or {@link Cable#CONTROLLER}.
 *
 * @param segment the segment it belongs to
 * @param arms its stretches of cable; where there is only one, the controller is among its stops
 * @param ends the two stops where terminators belong
 * @param biasAt the stop where bias resistors belong; null where nothing is to hold the pair
 */
public record Pair(
        Segment segment,
        List<Arm> arms,
        List<Integer> ends,
        @Nullable Integer biasAt) {

    /** Weaker resistors do not hold a pair with two terminators (MODBUS over serial line V1.02, 3.4.6). */
    static final int WEAKEST_BIAS_OHMS = 650;

    public Pair {
        arms = List.copyOf(arms);
        ends = List.copyOf(ends);
    }

    /** The pairs of a segment: none where it is direct, one for each port of a hub of transceivers, else one. */
    public static List<Pair> of(Pit pit, int index) {
        Segment segment = pit.segments().get(index);
        List<Arm> arms = segment.cable().arms();
        Hub hub = pit.hubOf(index);
        return switch (segment.cable().topology()) {
            case DIRECT -> List.of();
            case CHAIN -> List.of(one(segment, arms.get(0)));
            case STAR ->
                hub != null && hub.kind() == Hub.Kind.TRANSCEIVERS
                        ? arms.stream()
                                .map(arm -> one(segment, fromController(arm)))
                                .toList()
                        : List.of(joined(segment, arms));
        };
    }

    private static Pair one(Segment segment, Arm arm) {
        List<Integer> stops = arm.stops();
        List<Integer> ends = List.of(stops.get(0), stops.get(stops.size() - 1));
        return new Pair(segment, List.of(arm), ends, biasAt(segment, stops));
    }

    /**
     * Arms that are wired together. The two longest make the line, by their metres or, where those are not known, by
     * their number of boards; the rest are branches.
     */
    private static Pair joined(Segment segment, List<Arm> arms) {
        if (arms.size() == 1) {
            return one(segment, fromController(arms.get(0)));
        }
        List<Integer> stops = new ArrayList<>(List.of(Cable.CONTROLLER));
        arms.forEach(arm -> stops.addAll(arm.stops()));
        List<Integer> ends = arms.stream()
                .sorted(new Route(segment).longestFirst(arms))
                .limit(2)
                .map(arm -> arm.stops().get(arm.stops().size() - 1))
                .toList();
        return new Pair(segment, arms, ends, biasAt(segment, stops));
    }

    private static Arm fromController(Arm arm) {
        List<Integer> stops = new ArrayList<>(List.of(Cable.CONTROLLER));
        stops.addAll(arm.stops());
        return new Arm(arm.name(), stops);
    }

    /** At the first module that brings resistors of its own that can hold the pair, else at the controller. */
    private static @Nullable Integer biasAt(Segment segment, List<Integer> stops) {
        if (!segment.biased()) {
            return null;
        }
        return stops.stream()
                .filter(stop -> stop != Cable.CONTROLLER && hasBias(segment, stop))
                .findFirst()
                .orElse(Cable.CONTROLLER);
    }

    /**
     * What the modules' own resistors that are too weak to hold the pair alone come to together, ohm; infinite where
     * there are none. Each side of the pair sees them in parallel.
     */
    public double weakBiasOhms() {
        return 1 / weakSiemens(stops());
    }

    /** Whether those together could hold the pair, and so are a second place. */
    public boolean isWeakBiasStrongTogether() {
        return weakBiasOhms() <= WEAKEST_BIAS_OHMS;
    }

    private double weakSiemens(List<Integer> among) {
        return among.stream()
                .filter(stop -> hasWeakBias(segment, stop))
                .mapToDouble(stop -> 1.0 / load(segment, stop).biasOhms())
                .sum();
    }

    /** The stretches of cable between its stops, arm by arm; those of joined arms begin at the controller. */
    public List<Span> spans() {
        Route route = new Route(segment);
        return arms.stream().flatMap(arm -> route.spans(arm).stream()).toList();
    }

    /** From one end of the line to the other, m; NaN where any of it is not known. */
    public double metres() {
        Route route = new Route(segment);
        return arms.stream()
                .filter(this::isOnTheLine)
                .mapToDouble(route::metres)
                .sum();
    }

    /** The pieces that hang off the line: every board's stub, and each joined arm that is a branch. */
    List<Branch> branches() {
        Route route = new Route(segment);
        List<Branch> branches = new ArrayList<>();
        for (Arm arm : arms) {
            for (int stop : arm.stops()) {
                branches.add(new Branch(stop, route.stub(stop)));
            }
            if (!isOnTheLine(arm)) {
                branches.add(new Branch(arm.stops().get(arm.stops().size() - 1), route.metres(arm)));
            }
        }
        return branches;
    }

    /**
     * A piece of cable without a terminator.
     *
     * @param stop the stop it leads to
     * @param metres its length, m; NaN where nobody said
     */
    record Branch(int stop, double metres) {}

    private boolean isOnTheLine(Arm arm) {
        return arms.size() <= 2 || isEnd(arm.stops().get(arm.stops().size() - 1));
    }

    /** What it is called: its segment, and its arm where it is one of several pairs. */
    public String name() {
        return isOneOfSeveral() ? segment.name() + ", arm " + arms.get(0).name() : segment.name();
    }

    /** Every stop on it, arm by arm. */
    public List<Integer> stops() {
        return arms.stream().flatMap(arm -> arm.stops().stream()).toList();
    }

    /** Whether it has branches, which no terminator can quieten: more than two arms that are wired together. */
    public boolean isBranched() {
        return arms.size() > 2;
    }

    /** Whether a terminator belongs at this stop. */
    public boolean isEnd(int stop) {
        return ends.contains(stop);
    }

    /** Whether bias resistors belong at this stop. */
    public boolean isBiasedAt(int stop) {
        return Objects.equals(biasAt, stop);
    }

    /** What a module brings of its own that must come off: its terminator where no end is. */
    public boolean losesTerminator(int stop) {
        return stop != Cable.CONTROLLER && load(segment, stop).terminatorOhms() > 0 && !isEnd(stop);
    }

    /**
     * What a module brings of its own that must come off: its bias resistors where others hold the pair. Those too weak
     * to hold it may stay, in the order on the cable, as long as together they are too weak as well.
     */
    public boolean losesBias(int stop) {
        if (stop == Cable.CONTROLLER || biasAt == null || isBiasedAt(stop)) {
            return false;
        }
        return hasBias(segment, stop) || (hasWeakBias(segment, stop) && !staysWeak(stop));
    }

    private boolean staysWeak(int stop) {
        List<Integer> staying = new ArrayList<>();
        for (int candidate : stops()) {
            staying.add(candidate);
            boolean fits = 1 / weakSiemens(staying) > WEAKEST_BIAS_OHMS;
            if (candidate == stop) {
                return fits;
            }
            if (!fits) {
                staying.remove(staying.size() - 1);
            }
        }
        throw new IllegalArgumentException("a stop must be on the pair: stop=" + stop);
    }

    private static boolean hasBias(Segment segment, int stop) {
        int ohms = load(segment, stop).biasOhms();
        return ohms > 0 && ohms <= WEAKEST_BIAS_OHMS;
    }

    private static boolean hasWeakBias(Segment segment, int stop) {
        return stop != Cable.CONTROLLER && load(segment, stop).biasOhms() > WEAKEST_BIAS_OHMS;
    }

    private static PairLoad load(Segment segment, int stop) {
        return segment.nodes().get(stop).fitting().pairLoad();
    }

    /** What stands at a stop as the pair meets it, the controller's own transceiver included. */
    PairLoad load(int stop) {
        return stop == Cable.CONTROLLER ? segment.cable().fitted().controller() : load(segment, stop);
    }

    /** Every stop with a transceiver: those on the arms, and the controller where arms are joined at it. */
    List<Integer> transceivers() {
        List<Integer> all = new ArrayList<>(stops());
        if (!all.contains(Cable.CONTROLLER)) {
            all.add(0, Cable.CONTROLLER);
        }
        return all;
    }

    /** Whether it is one of several of its segment. */
    public boolean isOneOfSeveral() {
        return segment.cable().topology() == Topology.STAR
                && !arms.get(0).name().isEmpty()
                && arms.size() == 1;
    }
}
