package dropline.harness.baseline;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which changes of a pit are behind something that has become worse: the fewest found that alone bring it about when
 * they are made to the accepted pit. Tried one by one first, then joined to what explains most so far. Shares are of
 * the difference between the pit with none and with all of the changes, each run with the same seeds.
 */
public final class Why {
    /** So much of the difference is as good as all of it. */
    private static final double ENOUGH = 0.9;

    /** Less than that explains nothing. */
    private static final double SOMETHING = 0.02;

    /** What a figure comes to with some changes made. */
    @FunctionalInterface
    public interface Trial {
        /** The figure; empty where a pit with only these changes is none, or has no such figure. */
        Optional<Double> figure(List<PitChange> changes) throws IOException;
    }

    /**
     * What was found.
     *
     * @param changes that bring it about; empty where none was found
     * @param share how much of the difference they explain, 1 for all of it
     * @param tried how many pits were run
     */
    public record Cause(List<PitChange> changes, double share, int tried) {
        public Cause {
            changes = List.copyOf(changes);
        }
    }

    private final Trial trial;
    private double without;
    private double difference;
    private int tried;

    /** @param trial of the figure that has become worse */
    public Why(Trial trial) {
        this.trial = trial;
    }

    /** Looks for the cause among these changes. */
    public Cause among(List<PitChange> changes) throws IOException {
        tried += 2;
        without = trial.figure(List.of()).orElse(Double.NaN);
        difference = trial.figure(changes).orElse(Double.NaN) - without;
        if (Double.isNaN(difference) || difference == 0) {
            return new Cause(List.of(), 0, tried);
        }
        List<List<PitChange>> parts = parts(changes);
        List<List<PitChange>> chosen = new ArrayList<>();
        double share = 0;
        while (share < ENOUGH && chosen.size() < parts.size()) {
            List<PitChange> best = List.of();
            double most = share + SOMETHING;
            for (List<PitChange> part : parts) {
                if (!chosen.contains(part)) {
                    List<List<PitChange>> with = new ArrayList<>(chosen);
                    with.add(part);
                    double explained = share(with);
                    if (explained > most) {
                        most = explained;
                        best = part;
                    }
                }
            }
            if (best.isEmpty()) {
                break;
            }
            chosen.add(best);
            share = most;
        }
        return fewest(chosen, share);
    }

    /** What was taken first may turn out not to be needed. */
    private Cause fewest(List<List<PitChange>> chosen, double share) throws IOException {
        List<List<PitChange>> kept = new ArrayList<>(chosen);
        double explained = share;
        for (List<PitChange> part : chosen) {
            if (kept.size() > 1) {
                List<List<PitChange>> without = new ArrayList<>(kept);
                without.remove(part);
                double rest = share(without);
                if (rest >= Math.min(ENOUGH, explained - SOMETHING)) {
                    kept = without;
                    explained = rest;
                }
            }
        }
        return new Cause(kept.stream().flatMap(List::stream).toList(), explained, tried);
    }

    /** Changes that make a pit by themselves, one by one; those that do not, all together with what they need. */
    private List<List<PitChange>> parts(List<PitChange> changes) throws IOException {
        List<List<PitChange>> parts = new ArrayList<>();
        List<PitChange> together = new ArrayList<>();
        for (PitChange change : changes) {
            if (isPit(List.of(change))) {
                parts.add(List.of(change));
            } else {
                together.add(change);
            }
        }
        if (!together.isEmpty()) {
            List<PitChange> whole = completed(together, parts);
            parts.removeIf(whole::containsAll);
            parts.add(whole);
        }
        return parts;
    }

    /**
     * Joins to what makes no pit the fewest of the others with which it makes one: the kind that new boards are like.
     */
    private List<PitChange> completed(List<PitChange> together, List<List<PitChange>> others) throws IOException {
        if (isPit(together)) {
            return together;
        }
        List<PitChange> whole = new ArrayList<>(together);
        others.forEach(whole::addAll);
        for (List<PitChange> other : others) {
            List<PitChange> without = new ArrayList<>(whole);
            without.removeAll(other);
            if (isPit(without)) {
                whole = without;
            }
        }
        return whole;
    }

    private boolean isPit(List<PitChange> changes) throws IOException {
        tried++;
        return trial.figure(changes).isPresent();
    }

    private double share(List<List<PitChange>> parts) throws IOException {
        tried++;
        Optional<Double> figure =
                trial.figure(parts.stream().flatMap(List::stream).toList());
        return figure.map(with -> (with - without) / difference).orElse(0.0);
    }
}
