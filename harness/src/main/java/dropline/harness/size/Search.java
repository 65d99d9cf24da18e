package dropline.harness.size;

import dropline.bus.pit.Segment;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Looks for the most panels with which a segment still keeps its budgets. A run is made once, however often it is asked
 * for. Belongs to one thread; runs asked for together are made side by side.
 */
final class Search {
    /** In place of a number of panels: not even those there are. */
    static final int NOT_EVEN_THE_PRESENT = -1;

    private final Growth growth;
    private final Source.Opening opening;
    private final Judging judging;
    private final Demand demand;
    private final int most;
    private final @Nullable Search guide;
    private final Map<Case, Fare> made = new LinkedHashMap<>();

    /**
     * @param opening opens what is played, as the pit sees it before it grows
     * @param most so many panels may be added at most
     * @param guide searches the same on a part of what is played, and so says soon where to begin; null for none
     */
    Search(Growth growth, Source.Opening opening, Judging judging, Demand demand, int most, @Nullable Search guide) {
        this.growth = growth;
        this.opening = opening;
        this.judging = judging;
        this.demand = demand;
        this.most = most;
        this.guide = guide;
    }

    /** One without a guide, of another growth that is played something else. */
    Search with(Growth other, Source.Opening otherOpening) {
        return new Search(other, otherOpening, judging, demand, most, null);
    }

    /** The same with all runs made so far, for another thread. */
    Search copy() {
        return copy(guide == null ? null : guide.copy());
    }

    /** The same without a guide, for one that begins next to what it looks for. */
    Search unguided() {
        return copy(null);
    }

    private Search copy(@Nullable Search otherGuide) {
        Search copy = new Search(growth, opening, judging, demand, most, otherGuide);
        copy.made.putAll(made);
        return copy;
    }

    /** Takes over the runs that a copy has made since. */
    void takeOver(Search copy) {
        made.putAll(copy.made);
    }

    Source.Opening opening() {
        return opening;
    }

    /** The same of another growth. */
    Search of(Growth other) {
        return new Search(other, opening, judging, demand, most, guide == null ? null : guide.of(other));
    }

    int most() {
        return most;
    }

    Growth growth() {
        return growth;
    }

    /** How each of these fared over the whole of what is played, in their order. */
    List<Fare> fares(List<Case> cases) throws IOException {
        make(cases, true);
        return cases.stream().map(this::made).toList();
    }

    private Fare made(Case one) {
        return Objects.requireNonNull(made.get(one));
    }

    /** Makes what was not made yet; where the end is not asked for, a run is broken off once it has missed. */
    private void make(List<Case> cases, boolean toTheEnd) throws IOException {
        List<Case> missing = cases.stream()
                .filter(one -> !made.containsKey(one) || (toTheEnd && !made(one).whole()))
                .distinct()
                .toList();
        List<Fare> found = judging.each(missing, one -> run(one, toTheEnd));
        for (int i = 0; i < missing.size(); i++) {
            made.put(missing.get(i), found.get(i));
        }
    }

    private Fare run(Case one, boolean toTheEnd) throws IOException {
        Candidate candidate = growth.by(one.count()).candidate(opening, one.seed(), one.dead());
        Fare fare = toTheEnd ? Judging.judge(candidate) : Judging.judge(candidate, demand);
        return fare.with(demand.aside());
    }

    /** Those of a kind that were made so far, by their number of panels. */
    Map<Integer, Fare> made(long seed, int dead) {
        Map<Integer, Fare> kind = new TreeMap<>();
        made.forEach((one, fare) -> {
            if (one.seed() == seed && one.dead() == dead && fare.whole()) {
                kind.put(one.count(), fare);
            }
        });
        return kind;
    }

    /** All runs made with so many panels. */
    List<Case> madeWith(int count) {
        return made.keySet().stream().filter(one -> one.count() == count).toList();
    }

    /** The longest time of a run as a share of what it is allowed. */
    double strain(Case one) throws IOException {
        make(List.of(one), true);
        return demand.strain(made(one));
    }

    /** Whether all keep their budgets in all of these. */
    boolean keep(List<Case> cases) throws IOException {
        return missed(cases).isEmpty();
    }

    /** Whether all keep their budgets with so many panels in all these, whatever number they name. */
    private boolean keepWith(int count, List<Case> kinds) throws IOException {
        return keep(kinds.stream().map(kind -> kind.at(count)).toList());
    }

    /**
     * The most panels with which all is kept in these kinds of run: found upwards from a number in growing steps, or
     * downwards, then by halves. Where more panels do better than fewer, which chance may bring about, what is found is
     * kept and one more is not.
     *
     * @return {@link #NOT_EVEN_THE_PRESENT} where none is
     */
    int largest(int from, List<Case> kinds) throws IOException {
        int kept = NOT_EVEN_THE_PRESENT;
        int refuted = most + 1;
        int guided = guide == null ? from : guide.largest(from, kinds);
        int start = Math.max(0, Math.min(most, guided));
        if (guide != null) {
            missed(kinds.stream()
                    .flatMap(kind -> Stream.of(kind.at(start), kind.at(Math.min(most, start + 1))))
                    .toList());
        }
        int step = 1;
        if (keepWith(start, kinds)) {
            kept = start;
            while (kept < most && refuted > most) {
                int next = Math.min(most, kept + step);
                if (keepWith(next, kinds)) {
                    kept = next;
                } else {
                    refuted = next;
                }
                step *= 2;
            }
        } else {
            refuted = start;
            while (refuted > 0 && kept < 0) {
                int next = Math.max(0, refuted - step);
                if (keepWith(next, kinds)) {
                    kept = next;
                } else {
                    refuted = next;
                }
                step *= 2;
            }
        }
        return halved(kept, refuted, kinds);
    }

    /** The same, but never more than a number one begins with. */
    int largestUpTo(int from, List<Case> kinds) throws IOException {
        return keepWith(from, kinds) ? from : largest(from, kinds);
    }

    /** Between a number that keeps, or none, and one that does not. */
    private int halved(int kept, int refuted, List<Case> kinds) throws IOException {
        int low = kept;
        int high = refuted;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (keepWith(middle, kinds)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The largest between none and all, by halves. */
    int largest(List<Case> kinds) throws IOException {
        return guide == null ? halved(NOT_EVEN_THE_PRESENT, most + 1, kinds) : largest(guide.largest(kinds), kinds);
    }

    /** The largest in all these kinds: found in the last, which limits most, then lowered where another demands it. */
    int largestOf(List<Case> kinds, int from) throws IOException {
        int found = largest(from, kinds.subList(kinds.size() - 1, kinds.size()));
        return found < 0 ? found : largestUpTo(found, kinds);
    }

    /** What came nearest its budget in a run; null where nothing moved. */
    @Nullable
    Tight tight(Case one) throws IOException {
        Grown grown = growth.by(one.count());
        return fares(List.of(one))
                .get(0)
                .tightest()
                .map(fared -> Tight.of(fared, grown.pit(), grown.segment(), one.dead()))
                .orElse(null);
    }

    /** What misses with one more than so many, among all runs made with that; null where none was, or none misses. */
    @Nullable
    Tight beyond(int count) throws IOException {
        List<Case> missed = missed(madeWith(count + 1));
        return missed.isEmpty() ? null : tight(missed.get(0));
    }

    /** The segment with so many panels more. */
    Segment grownSegment(int count) {
        return growth.by(count).pit().segments().get(growth.segment());
    }

    /**
     * Of these, the one in which something comes nearest what it is allowed, or goes farthest beyond; of equals, the
     * first.
     */
    Case tightest(List<Case> cases) throws IOException {
        return byTightness(cases).get(0);
    }

    /** All of these, the one in which something comes nearest what it is allowed first. */
    List<Case> byTightness(List<Case> cases) throws IOException {
        make(cases, true);
        return cases.stream()
                .sorted(Comparator.comparingDouble((Case one) -> demand.strain(made(one)))
                        .reversed())
                .toList();
    }

    /** Those in which something comes near what it is allowed, and the one that comes nearest in any case. */
    List<Case> near(List<Case> cases, double share) throws IOException {
        List<Case> tightest = byTightness(cases);
        return tightest.stream()
                .filter(one -> one.equals(tightest.get(0)) || demand.strain(made(one)) >= share)
                .toList();
    }

    /** Those in which something misses its budget with the margin. */
    List<Case> missed(List<Case> cases) throws IOException {
        make(cases, false);
        return cases.stream().filter(one -> !demand.isMetBy(made(one))).toList();
    }
}
