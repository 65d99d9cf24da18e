package dropline.harness.origin;

import dropline.bus.pit.Pit;
import dropline.harness.pitfile.Figure;
import dropline.harness.pitfile.Figures;
import dropline.harness.pitfile.Origin;
import dropline.harness.pitfile.Scale;
import dropline.harness.replay.Progress;
import dropline.harness.replay.RunLimit;
import dropline.harness.replay.Source;
import dropline.harness.replay.Sweep;
import dropline.harness.verdict.PanelResult;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.RestsOn;
import dropline.harness.verdict.Strain;
import dropline.harness.verdict.WorstMoment;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Tries each guess of a pit at half and at double over a short stretch around a replay's tightest moment, and names the
 * one that moves the verdict most. What counts first is how many panels and controls fail, then how near the tightest
 * of the pit comes to its limit, then the tightest of the guess's own segment; of equals, the first in the pit file.
 */
public final class Trials {
    private static final long SECOND = 1_000_000_000L;
    private static final long SHORTEST_NANOS = 2 * SECOND;
    private static final long LONGEST_NANOS = 20 * SECOND;
    private static final int MOST_RUNS = 240;
    private static final int TOGETHER = 32;

    /** All runs together simulate at most this part of what the replay itself did, save that none is cut too short. */
    private static final int PART = 8;

    private static final double LEAST_SHARE = 0.0005;

    private final Pit pit;
    private final Figures figures;
    private final Stretch stretch;
    private final long seed;
    private final int threads;

    /** Opens a stretch of what was replayed. */
    @FunctionalInterface
    public interface Stretch {
        Source.Opening of(long fromNanos, long untilNanos);
    }

    /**
     * @param stretch opens a part of what was replayed, in ns into the run
     * @param threads at least 1
     */
    public Trials(Pit pit, Figures figures, Stretch stretch, long seed, int threads) {
        this.pit = pit;
        this.figures = figures;
        this.stretch = stretch;
        this.seed = seed;
        this.threads = threads;
    }

    /** What a pit rests on, without trying anything. */
    public static RestsOn counted(Figures figures) {
        return counted(figures, null);
    }

    private static RestsOn counted(Figures figures, RestsOn.@Nullable Tried tried) {
        return new RestsOn(
                figures.count(Origin.MEASURED),
                figures.count(Origin.PRESET),
                figures.count(Origin.GUESSED),
                figures.count(Origin.UNSTATED),
                tried);
    }

    /** What a replay of the pit rests on; guesses are tried where any panel was ever updated. */
    public RestsOn after(ReplayResult result, Progress progress) throws IOException {
        Optional<PanelResult> tightest =
                result.panels().stream().filter(p -> p.worst() != null).findFirst();
        List<Figure> guesses = new ArrayList<>(figures.of(Origin.GUESSED));
        if (tightest.isEmpty() || guesses.isEmpty()) {
            return counted(figures);
        }
        String segment = tightest.get().segment();
        guesses.sort(Comparator.comparing(guess -> !guess.segments().contains(segment)));
        List<Guess> tried = new ArrayList<>();
        List<Trial> runs = new ArrayList<>();
        List<String> refused = new ArrayList<>();
        int idle = 0;
        int left = 0;
        for (int first = 0; first < guesses.size(); first += TOGETHER) {
            List<Figure> some = guesses.subList(first, Math.min(first + TOGETHER, guesses.size()));
            if (runs.size() >= MOST_RUNS) {
                left += some.size();
                continue;
            }
            for (Guess guess : made(some)) {
                if (runs.size() >= MOST_RUNS) {
                    left++;
                    continue;
                }
                refused.addAll(guess.refused());
                if (guess.trials().isEmpty()) {
                    idle += guess.refused().isEmpty() ? 1 : 0;
                } else {
                    tried.add(guess);
                    runs.addAll(guess.trials());
                }
            }
        }
        List<Trial> asWritten = new ArrayList<>();
        for (int i = 0; i < pit.segments().size(); i++) {
            asWritten.add(new Trial(pit, i));
        }
        runs.addAll(0, asWritten);
        long duration = result.recording().durationNanos();
        long length = length(duration, runs.size());
        long from = from(tightest.get().worst(), length, duration);
        new Sweep(stretch.of(from, from + length), seed, threads, RunLimit.USUAL).run(runs, progress);
        return counted(
                figures,
                new RestsOn.Tried(tried.size(), from, from + length, idle, refused, left, next(tried, asWritten)));
    }

    /** Each is a whole pit or two, and they share nothing. */
    private List<Guess> made(List<Figure> some) {
        Stream<Figure> figuresToTry = threads > 1 ? some.parallelStream() : some.stream();
        return figuresToTry.map(figure -> new Guess(figure, pit, figures)).toList();
    }

    private long length(long durationNanos, int runs) {
        long affordable = durationNanos / PART * pit.segments().size() / runs;
        long length = Math.max(SHORTEST_NANOS, Math.min(LONGEST_NANOS, affordable / SECOND * SECOND));
        return Math.min(durationNanos, length);
    }

    /** Three quarters of the stretch lie before the moment, so that what led to it is played too. */
    private static long from(@Nullable WorstMoment worst, long length, long durationNanos) {
        long moment = worst == null ? 0 : worst.shownNanos();
        long earliest = Math.max(0, moment - length / 4 * 3) / SECOND * SECOND;
        return Math.max(0, Math.min(earliest, (durationNanos - length) / SECOND * SECOND));
    }

    private RestsOn.@Nullable Next next(List<Guess> guesses, List<Trial> asWritten) {
        Moved most = new Moved(0, 0, 0);
        RestsOn.Next next = null;
        for (Guess guess : guesses) {
            for (Trial before : asWritten) {
                Moved moved = moved(guess, before, asWritten);
                if (moved.isMoreThan(most)) {
                    most = moved;
                    next = new RestsOn.Next(
                            guess.figure().path(),
                            guess.figure().text(),
                            guess.figure().where(),
                            pit.segments().get(before.segment()).name(),
                            before.strain(),
                            guess.strain(Scale.HALF, before.segment()),
                            guess.strain(Scale.DOUBLE, before.segment()));
                }
            }
        }
        return next;
    }

    private static Moved moved(Guess guess, Trial before, List<Trial> asWritten) {
        Strain pit = together(asWritten, -1, before.strain());
        Moved most = new Moved(0, 0, 0);
        for (Scale scale : Scale.values()) {
            Strain then = guess.strain(scale, before.segment());
            if (then != null) {
                Moved moved = new Moved(
                        Math.abs(then.failing() - before.strain().failing()),
                        Math.abs(together(asWritten, before.segment(), then).share() - pit.share()),
                        Math.abs(then.share() - before.strain().share()));
                most = moved.isMoreThan(most) ? moved : most;
            }
        }
        return most;
    }

    private static Strain together(List<Trial> asWritten, int instead, Strain then) {
        return Strain.together(asWritten.stream()
                .map(trial -> trial.segment() == instead ? then : trial.strain())
                .toList());
    }

    /** By how much a guess moves a verdict. */
    private record Moved(int failing, double pitShare, double segmentShare) {
        boolean isMoreThan(Moved other) {
            if (failing != other.failing) {
                return failing > other.failing;
            }
            if (Math.abs(pitShare - other.pitShare) > LEAST_SHARE) {
                return pitShare > other.pitShare;
            }
            return segmentShare > other.segmentShare + LEAST_SHARE;
        }
    }
}
