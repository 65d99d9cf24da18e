package dropline.harness.baseline;

import dropline.harness.baseline.Deviation.Standing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * What differs between two looks at a run with the same seeds. A simulated run is the same whenever nothing has
 * changed, so every difference beyond a figure's resolution is a change and none is chance.
 */
public final class Since {
    private Since() {}

    /**
     * What differs, the largest change first; what is new or gone before it.
     *
     * @param run its name in the suite
     * @param before its runs then, a seed each, at least one
     * @param now its runs now
     */
    public static List<Deviation> of(String run, List<Tracked> before, List<Tracked> now) {
        Map<Subject, Map<Figure, Spread>> then = AcceptedRun.spread(before);
        Map<Subject, Map<Figure, Spread>> here = AcceptedRun.spread(now);
        List<Deviation> deviations = new ArrayList<>();
        TreeSet<Subject> subjects = new TreeSet<>(then.keySet());
        subjects.addAll(here.keySet());
        for (Subject subject : subjects) {
            Map<Figure, Spread> was = then.get(subject);
            Map<Figure, Spread> is = here.get(subject);
            if (was == null || is == null) {
                Standing standing = was == null ? Standing.NEW : Standing.GONE;
                deviations.add(new Deviation(run, subject, null, standing, 0, 0, Double.POSITIVE_INFINITY));
            } else {
                was.forEach((figure, spread) -> {
                    Spread after = is.get(figure);
                    if (after != null) {
                        compare(run, subject, figure, spread.mean(), after.mean(), deviations);
                    }
                });
            }
        }
        deviations.sort(Comparator.comparingDouble(Deviation::strength).reversed());
        return deviations;
    }

    private static void compare(
            String run, Subject subject, Figure figure, double was, double is, List<Deviation> deviations) {
        double strength = Math.abs(is - was) / figure.leastDeviation(was);
        if (strength > 1) {
            Standing standing =
                    figure.isOfTheRecording() ? Standing.OTHER : is > was ? Standing.WORSE : Standing.BETTER;
            deviations.add(new Deviation(run, subject, figure, standing, was, is, strength));
        }
    }
}
