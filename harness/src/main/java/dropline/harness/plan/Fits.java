package dropline.harness.plan;

import dropline.bus.copper.Copper;
import dropline.bus.copper.GroundVolts;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.rule.Rule;
import dropline.bus.rule.Ruling;
import dropline.bus.supply.State;
import dropline.bus.supply.Supplies;
import dropline.harness.size.Aside;
import dropline.harness.size.Candidate;
import dropline.harness.size.DeadClasses;
import dropline.harness.size.Demand;
import dropline.harness.size.Fare;
import dropline.harness.size.Fared;
import dropline.harness.size.Judging;
import dropline.harness.size.Mirror;
import dropline.harness.size.Tape;
import dropline.harness.size.Tight;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.LongAdder;
import org.jspecify.annotations.Nullable;

/**
 * Whether boards can share a segment, found by playing it: the first settings of {@link Choices} with which every
 * budget keeps its margin, on a short stretch first, then on the busiest minute, with one board of each kind dead, and
 * in every seed. A group is played once, however often it is asked for.
 */
final class Fits {
    /** So many settings are tried side by side; what comes out does not depend on it. */
    private static final int TOGETHER = 4;

    private final PlanAsked asked;
    private final Draft draft;
    private final Choices choices;
    private final Stretches stretches;
    private final Judging judging;
    private final Layout layout;
    private final Sound sound;
    private final Map<String, Double> groundVolts = new LinkedHashMap<>();
    private final Map<Group, Optional<Fit>> found = new LinkedHashMap<>();
    private final Map<Group, Integer> refused = new LinkedHashMap<>();
    private final Map<Group, Refusal> refusals = new LinkedHashMap<>();
    private final Set<String> unmendable = new TreeSet<>();
    private final LongAdder runs = new LongAdder();
    private Demand demand;

    /**
     * What is played, as the pit sees it.
     *
     * @param brief its busiest seconds
     * @param busiest its busiest minute
     */
    record Stretches(Tape brief, Tape busiest) {}

    Fits(PlanAsked asked, Boards boards, Draft draft, Choices choices, Stretches stretches, Judging judging) {
        this.asked = asked;
        this.draft = draft;
        this.choices = choices;
        this.stretches = stretches;
        this.judging = judging;
        demand = new Demand(asked.margin(), Aside.NOBODY);
        layout = Layout.of(asked.pit());
        sound = new Sound(asked.pit(), boards);
        if (!asked.pit().supplies().isEmpty()) {
            double[] volts = Supplies.groundVolts(asked.pit(), State.LAMP_TEST);
            for (int n = 0; n < volts.length; n++) {
                groundVolts.put(layout.nodes().get(n).node().name(), Double.isNaN(volts[n]) ? 0 : volts[n]);
            }
        }
    }

    /** From now on these do not count, and these laws of copper are not held against anybody. */
    void excuse(Aside those, Set<String> laws) {
        demand = new Demand(asked.margin(), those);
        unmendable.addAll(laws);
    }

    /** How many runs were made. */
    long runs() {
        return runs.sum();
    }

    /** The first settings that will do. */
    Optional<Fit> of(Group group) throws IOException {
        Optional<Fit> known = found.get(group);
        if (known == null) {
            known = search(group);
            found.put(group, known);
        }
        return known;
    }

    /** Whether all of them will do; stops at the first that does not. */
    boolean all(List<Group> groups) throws IOException {
        for (Group group : groups) {
            if (of(group).isEmpty()) {
                return false;
            }
        }
        return true;
    }

    /** What was found turned out not to hold beside the others: the next settings count. */
    void refuse(Fit fit) {
        refused.put(fit.group(), choices.of(fit.group()).indexOf(fit.settings()) + 1);
        found.remove(fit.group());
    }

    /** Why the first settings tried would not do; null where nobody asked, or they do. */
    @Nullable
    Refusal refusal(Group group) {
        return refusals.get(group);
    }

    private Refusal refusal(Group group, List<Settings> all, List<Settings> lawful, @Nullable Fare first) {
        Ruling law = lawful.isEmpty() && !all.isEmpty()
                ? rulings(draft.alone(group, all.get(0)), 0).stream()
                        .filter(ruling -> isBrokenLaw(ruling)
                                && !unmendable.contains(ruling.rule().name()))
                        .findFirst()
                        .orElse(null)
                : null;
        Fared missing = first == null || keeps(first) ? null : first.tightest().orElse(null);
        return new Refusal(group.boards().size(), law, missing);
    }

    private Optional<Fit> search(Group group) throws IOException {
        List<Settings> lawful = new ArrayList<>();
        List<Settings> all = choices.of(group);
        for (Settings settings : all.subList(refused.getOrDefault(group, 0), all.size())) {
            if (brokenLaws(group, settings).isEmpty() && sound.isAsSoundAsNow(group, draft.alone(group, settings))) {
                lawful.add(settings);
            }
        }
        int from = 0;
        Fare first = null;
        while (from < lawful.size()) {
            int to = from == 0 ? 1 : Math.min(from + TOGETHER, lawful.size());
            List<Settings> tried = lawful.subList(from, to);
            List<Candidate> brief = new ArrayList<>();
            tried.forEach(settings -> brief.add(
                    candidate(draft.alone(group, settings), stretches.brief(), asked.seed(), Candidate.HEALTHY)));
            List<Fare> fares = fares(brief);
            first = from == 0 ? fares.get(0) : first;
            for (int i = 0; i < tried.size(); i++) {
                Optional<Fit> fit = keeps(fares.get(i)) ? whole(group, tried.get(i)) : Optional.empty();
                if (fit.isPresent()) {
                    return fit;
                }
            }
            from = to;
        }
        refusals.put(group, refusal(group, all, lawful, first));
        return Optional.empty();
    }

    /** On the busiest minute: alive, then with one board of each kind dead, then in the other seeds. */
    private Optional<Fit> whole(Group group, Settings settings) throws IOException {
        Pit pit = draft.alone(group, settings);
        Fare alive = fares(List.of(candidate(pit, stretches.busiest(), asked.seed(), Candidate.HEALTHY)))
                .get(0);
        if (!keeps(alive)) {
            return Optional.empty();
        }
        List<Candidate> more = new ArrayList<>();
        List<Integer> dead = DeadClasses.of(pit.segments().get(0));
        if (group.boards().size() > 1) {
            dead.forEach(node -> more.add(candidate(pit, stretches.busiest(), asked.seed(), node)));
        }
        for (long seed = asked.seed() + 1; seed < asked.seed() + asked.seeds(); seed++) {
            more.add(candidate(pit, stretches.busiest(), seed, Candidate.HEALTHY));
        }
        List<Fare> fares = fares(more);
        if (!fares.stream().allMatch(this::keeps)) {
            return Optional.empty();
        }
        Tight healthy = tight(alive, pit, Candidate.HEALTHY);
        Tight withDead = null;
        for (int i = 0; i < more.size(); i++) {
            int node = more.get(i).dead();
            Tight one = tight(fares.get(i), pit, node);
            if (node == Candidate.HEALTHY) {
                healthy = tighter(healthy, one);
            } else {
                withDead = tighter(withDead, one);
            }
        }
        return Optional.of(new Fit(group, settings, healthy, withDead));
    }

    static @Nullable Tight tighter(@Nullable Tight one, @Nullable Tight other) {
        return one == null
                        || (other != null && other.fared().share() > one.fared().share())
                ? other
                : one;
    }

    private static @Nullable Tight tight(Fare fare, Pit pit, int dead) {
        return fare.tightest().map(fared -> Tight.of(fared, pit, 0, dead)).orElse(null);
    }

    /** How each of these fared, side by side, broken off where it misses. */
    List<Fare> fares(List<Candidate> candidates) throws IOException {
        runs.add(candidates.size());
        return judging.all(candidates, demand);
    }

    boolean keeps(Fare fare) {
        return demand.isMetBy(fare);
    }

    /** Any pit's segment of index 0 as a candidate, played what the pit as it is now is played. */
    private Candidate candidate(Pit pit, Tape tape, long seed, int dead) {
        Mirror mirror = mirror(pit);
        return new Candidate(pit, 0, () -> mirror.over(tape.open()), seed, dead);
    }

    Mirror mirror(Pit pit) {
        return Mirror.between(layout, Layout.of(pit), pit.signals().size());
    }

    /** Laws of copper that a group breaks, by the names of their rules, without those that nothing mends. */
    List<String> brokenLaws(Group group, Settings settings) {
        return rulings(draft.alone(group, settings), 0).stream()
                .filter(Fits::isBrokenLaw)
                .map(ruling -> ruling.rule().name())
                .filter(rule -> !unmendable.contains(rule))
                .distinct()
                .toList();
    }

    /** What the rules of copper come to; grounds are lifted as they are now, since supplies stay where they are. */
    List<Ruling> rulings(Pit pit, int segment) {
        if (groundVolts.isEmpty()) {
            return Copper.rule(pit, segment, GroundVolts.UNKNOWN);
        }
        List<Double> volts = pit.segments().get(segment).nodes().stream()
                .map(Node::name)
                .map(name -> groundVolts.getOrDefault(name, 0.0))
                .toList();
        return Copper.rule(
                pit,
                segment,
                new GroundVolts(volts, 0, GroundVolts.of(asked.pit(), 0).basis()));
    }

    static boolean isBrokenLaw(Ruling ruling) {
        return ruling.standing() == Ruling.Standing.BROKEN && ruling.rule().weight() == Rule.Weight.LAW;
    }

    /** How each of a board's panels and controls does on a segment of its own, with the settings that suit it best. */
    Alone alone(Board board, List<Integer> segments) throws IOException {
        List<Fared> best = List.of();
        List<String> laws = List.of();
        boolean first = true;
        for (int segment : nearestFirst(board, segments)) {
            Group group = new Group(segment, false, List.of(board.number()));
            for (Settings settings : choices.of(group)) {
                List<String> broken = brokenLaws(group, settings);
                Candidate whole =
                        candidate(draft.alone(group, settings), stretches.busiest(), asked.seed(), Candidate.HEALTHY);
                List<Fared> each = judging.all(List.of(whole)).get(0).each();
                runs.increment();
                best = first ? each : better(best, each);
                laws = first ? broken : laws.stream().filter(broken::contains).toList();
                first = false;
                if (laws.isEmpty() && best.stream().allMatch(one -> one.keeps(asked.margin()))) {
                    return new Alone(best, laws);
                }
            }
        }
        return new Alone(best, laws);
    }

    /**
     * What a board comes to if it has a segment to itself.
     *
     * @param each how its panels and controls fare at best
     * @param laws those of copper that it breaks whatever the settings
     */
    record Alone(List<Fared> each, List<String> laws) {}

    private static List<Integer> nearestFirst(Board board, List<Integer> segments) {
        return segments.stream()
                .sorted(Comparator.comparing((Integer segment) -> segment != board.segment()))
                .toList();
    }

    private static List<Fared> better(List<Fared> one, List<Fared> other) {
        List<Fared> better = new ArrayList<>();
        for (int i = 0; i < one.size(); i++) {
            Fared a = one.get(i);
            Fared b = other.get(i);
            boolean second = a.lost() != b.lost() ? b.lost() < a.lost() : b.worstNanos() < a.worstNanos();
            better.add(second ? b : a);
        }
        return better;
    }
}
