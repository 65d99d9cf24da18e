package dropline.harness.baseline;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What one run of a suite came to, over several seeds.
 *
 * @param played the name of what was played
 * @param content of what was played, as 16 hexadecimal digits; equal where it is the same
 * @param seed the first
 * @param digest of the trace with that seed
 * @param figures in order
 */
public record AcceptedRun(
        String played, String content, long seed, String digest, Map<Subject, Map<Figure, Spread>> figures) {

    /** What several runs, a seed each, came to; the digest is the first one's. */
    public static AcceptedRun of(String played, String content, long seed, String digest, List<Tracked> runs) {
        return new AcceptedRun(played, content, seed, digest, spread(runs));
    }

    /** The spread of the figures that every one of these runs has. */
    static Map<Subject, Map<Figure, Spread>> spread(List<Tracked> runs) {
        Map<Subject, Map<Figure, List<Double>>> values = new TreeMap<>();
        for (Tracked run : runs) {
            run.figures()
                    .forEach((subject, own) -> own.forEach(
                            (figure, value) -> values.computeIfAbsent(subject, none -> new EnumMap<>(Figure.class))
                                    .computeIfAbsent(figure, none -> new ArrayList<>())
                                    .add(value)));
        }
        Map<Subject, Map<Figure, Spread>> spread = new TreeMap<>();
        values.forEach((subject, own) -> {
            Map<Figure, Spread> ofSubject = new EnumMap<>(Figure.class);
            own.forEach((figure, all) -> {
                if (all.size() == runs.size()) {
                    ofSubject.put(figure, Spread.of(all));
                }
            });
            // what is there with some seeds only, such as a board that seldom answers, cannot be followed
            if (!ofSubject.isEmpty()) {
                spread.put(subject, ofSubject);
            }
        });
        return spread;
    }
}
