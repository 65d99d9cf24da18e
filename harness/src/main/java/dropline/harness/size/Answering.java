package dropline.harness.size;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;

/**
 * Finds how many panels time on the wire allows: healthy first, then with one node of each kind dead at what was found,
 * then in every seed, then over all that is played. Whatever fails on the way lowers the answer.
 */
final class Answering {
    /** Of the kinds of dead node, those tried beyond the screening. */
    private static final int SCREENED = 3;

    /** In further seeds, only kinds of run are made in which something came as near as this to what it is allowed. */
    private static final double NEAR = 0.9;

    private final Search screen;
    private final Search stretch;
    private final Search whole;
    private final long seed;
    private final int seeds;
    private final Judging judging;
    private final List<Case> kinds = new ArrayList<>();
    private int deadKinds;

    /**
     * @param screen searches on a short stretch, to see which dead nodes matter
     * @param stretch searches on the busiest stretch
     * @param whole searches on all that is played
     */
    Answering(Search screen, Search stretch, Search whole, long seed, int seeds, Judging judging) {
        this.screen = screen;
        this.stretch = stretch;
        this.whole = whole;
        this.seed = seed;
        this.seeds = seeds;
        this.judging = judging;
    }

    /** The kinds of run found to matter so far: healthy, and with the node dead, or those, that limit most. */
    List<Case> kinds() {
        return List.copyOf(kinds);
    }

    /** What the first seed allows on the busiest stretch; -1 where not even those there are keep their budgets. */
    int inFirstSeed() throws IOException {
        kinds.add(new Case(0, seed, Candidate.HEALTHY));
        return withDead(stretch.largest(kinds));
    }

    /** What that comes to in every seed, and over all that is played. */
    TimeAnswer answer(int found) throws IOException {
        if (found < 0) {
            return new TimeAnswer(-1, -1, -1, false, false, null, stretch.beyond(found), deadKinds);
        }
        int least = found;
        int most = found;
        for (int bySeed : bySeed(found)) {
            least = Math.min(least, bySeed);
            most = Math.max(most, bySeed);
        }
        least = least < found && least >= 0 ? withDead(least) : least;
        int confirmed = least < 0 ? least : whole.largestUpTo(least, kinds);
        Tight beyond = stretch.beyond(confirmed);
        boolean beyondOnWhole = confirmed >= 0 && confirmed < whole.most() && failsOnWhole(confirmed + 1);
        return new TimeAnswer(
                confirmed,
                found,
                most,
                true,
                beyondOnWhole,
                confirmed < 0 ? null : tightest(confirmed),
                beyond == null ? whole.beyond(confirmed) : beyond,
                deadKinds);
    }

    /** Lowers a number until one node of each kind may be dead; notes the kinds that matter. */
    private int withDead(int from) throws IOException {
        int found = from;
        while (found >= 0) {
            List<Case> dead = screenedAt(found);
            List<Case> missed = stretch.missed(dead);
            if (missed.isEmpty()) {
                if (kinds.size() == 1 && !dead.isEmpty()) {
                    kinds.add(stretch.tightest(dead).at(0));
                }
                return found;
            }
            kinds.add(stretch.tightest(missed).at(0));
            found = stretch.largestOf(kinds, found);
        }
        return found;
    }

    private List<Case> deadAt(int count) {
        List<Case> dead = new ArrayList<>();
        for (int node : DeadClasses.of(stretch.grownSegment(count))) {
            dead.add(new Case(count, seed, node));
        }
        deadKinds = Math.max(deadKinds, dead.size());
        return dead;
    }

    /** Of the dead nodes, those that matter most on the short stretch. */
    private List<Case> screenedAt(int count) throws IOException {
        List<Case> dead = screen.byTightness(deadAt(count));
        return dead.subList(0, Math.min(SCREENED, dead.size()));
    }

    /** What each further seed allows. */
    private List<Integer> bySeed(int found) throws IOException {
        int next = Math.min(found + 1, stretch.most());
        List<Case> refuting = stretch.missed(at(next));
        List<Case> near = stretch.near(at(found), NEAR);
        List<Case> all = new ArrayList<>();
        for (long other = seed + 1; other < seed + seeds; other++) {
            for (Case one : near) {
                all.add(one.with(other));
            }
            for (Case one : refuting) {
                all.add(one.with(other));
            }
        }
        stretch.missed(all);
        List<Sown> sown = judging.each(
                LongStream.range(seed + 1, seed + seeds).boxed().toList(),
                other -> bySeed(stretch.unguided(), found, other, near, refuting));
        sown.forEach(one -> stretch.takeOver(one.search()));
        return sown.stream().map(Sown::largest).toList();
    }

    /** What one seed allows, and what found it. */
    private record Sown(int largest, Search search) {}

    /** What refuted one more in the first seed mostly does so in another; only where it does not, one searches. */
    private static Sown bySeed(Search search, int found, long other, List<Case> near, List<Case> refuting)
            throws IOException {
        List<Case> more = refuting.stream().map(one -> one.with(other)).toList();
        boolean refuted = found == search.most() || (!more.isEmpty() && !search.keep(more));
        List<Case> same = near.stream().map(one -> one.with(other)).toList();
        return new Sown(refuted && search.keep(same) ? found : search.largest(found, same), search);
    }

    /** Tries first what failed on the stretch. */
    private boolean failsOnWhole(int count) throws IOException {
        List<Case> missed = stretch.missed(stretch.madeWith(count));
        return !whole.keep(missed.isEmpty() ? at(count) : List.of(stretch.tightest(missed)));
    }

    private List<Case> at(int count) {
        return at(count, seed);
    }

    private List<Case> at(int count, long otherSeed) {
        return kinds.stream().map(kind -> kind.at(count).with(otherSeed)).toList();
    }

    private @Nullable Tight tightest(int count) throws IOException {
        List<Case> all = new ArrayList<>(at(count));
        all.addAll(screenedAt(count));
        return stretch.tight(stretch.tightest(all));
    }
}
