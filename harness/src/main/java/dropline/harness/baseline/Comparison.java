package dropline.harness.baseline;

import dropline.harness.baseline.Deviation.Standing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.apache.commons.statistics.distribution.TDistribution;
import org.jspecify.annotations.Nullable;

/**
 * Holds runs against accepted ones. A figure is off where the mean of its runs lies farther from the accepted mean than
 * chance explains: Student's t for the difference of two means whose common spread is known from the accepted runs,
 * corrected for the number of comparisons (Bonferroni), so that one comparison of everything gives a false alarm once
 * in ten thousand times, if its figures are spread normally.
 */
public final class Comparison {
    /** False alarms of one whole comparison. */
    private static final double FALSE_ALARMS = 1e-4;

    private final Accepted accepted;
    private final double critical;

    public Comparison(Accepted accepted) {
        this.accepted = accepted;
        long figures = accepted.runs().values().stream()
                .flatMap(run -> run.figures().values().stream())
                .mapToLong(Map::size)
                .sum();
        critical = accepted.seeds() < 2
                ? Double.POSITIVE_INFINITY
                : TDistribution.of(accepted.seeds() - 1)
                        .inverseSurvivalProbability(FALSE_ALARMS / 2 / Math.max(1, figures));
    }

    /**
     * What differs, what is worst first; what is new, gone or better after it.
     *
     * @param run its name in the suite
     * @param now its runs, a seed each, at least one
     */
    public List<Deviation> of(String run, List<Tracked> now) {
        AcceptedRun before = accepted.runs().get(run);
        List<Deviation> deviations = new ArrayList<>();
        if (before == null) {
            return deviations;
        }
        Map<Subject, Map<Figure, Spread>> after = AcceptedRun.spread(now);
        TreeSet<Subject> subjects = new TreeSet<>(before.figures().keySet());
        subjects.addAll(after.keySet());
        for (Subject subject : subjects) {
            Map<Figure, Spread> was = before.figures().get(subject);
            Map<Figure, Spread> is = after.get(subject);
            if (was == null || is == null) {
                Standing standing = was == null ? Standing.NEW : Standing.GONE;
                deviations.add(new Deviation(run, subject, null, standing, 0, 0, 0));
            } else {
                was.forEach((figure, spread) -> compare(run, subject, figure, spread, is.get(figure), deviations));
            }
        }
        deviations.sort(Comparator.comparing(Deviation::standing)
                .thenComparing(Comparator.comparingDouble(Deviation::strength).reversed()));
        return deviations;
    }

    private void compare(
            String run, Subject subject, Figure figure, Spread was, @Nullable Spread is, List<Deviation> deviations) {
        if (is == null) {
            deviations.add(new Deviation(run, subject, figure, Standing.GONE, was.mean(), 0, 0));
            return;
        }
        double deviation = Math.max(was.deviation(), figure.leastDeviation(was.mean()));
        double ofDifference = deviation * StrictMath.sqrt(1.0 / was.count() + 1.0 / is.count());
        double difference = is.mean() - was.mean();
        double strength = Math.abs(difference) / ofDifference / critical;
        if (strength > 1) {
            Standing standing =
                    figure.isOfTheRecording() ? Standing.OTHER : difference > 0 ? Standing.WORSE : Standing.BETTER;
            deviations.add(new Deviation(run, subject, figure, standing, was.mean(), is.mean(), strength));
        }
    }
}
