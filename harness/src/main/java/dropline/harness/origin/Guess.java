package dropline.harness.origin;

import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.pitfile.Figure;
import dropline.harness.pitfile.Figures;
import dropline.harness.pitfile.Scale;
import dropline.harness.verdict.Strain;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A guessed figure with the runs that try it: at each scale, the segments that are then other ones. */
final class Guess {
    private final Figure figure;
    private final Map<Scale, List<Trial>> trials = new EnumMap<>(Scale.class);
    private final List<String> refused = new ArrayList<>();

    Guess(Figure figure, Pit pit, Figures figures) {
        this.figure = figure;
        for (Scale scale : Scale.values()) {
            Optional<Pit> scaled = figures.scaled(figure, scale);
            if (scaled.isEmpty()) {
                refused.add(figure.path() + " at " + scale.word());
            }
            trials.put(scale, scaled.map(other -> changed(pit, other)).orElse(List.of()));
        }
    }

    /** The segments that are other ones, and those that run with one. */
    private static List<Trial> changed(Pit pit, Pit other) {
        List<Trial> changed = new ArrayList<>();
        for (int i = 0; i < pit.segments().size(); i++) {
            if (pit.runsWith(i).stream().anyMatch(segment -> differs(pit, other, segment))) {
                changed.add(new Trial(other, i));
            }
        }
        return changed;
    }

    private static boolean differs(Pit pit, Pit other, int segment) {
        Segment before = pit.segments().get(segment);
        Segment after = other.segments().get(segment);
        return !before.nodes().equals(after.nodes())
                || !before.controller().equals(after.controller())
                || pit.turnNanos(segment) != other.turnNanos(segment);
    }

    Figure figure() {
        return figure;
    }

    /** The scales at which it cannot be tried, in words. */
    List<String> refused() {
        return refused;
    }

    /** All its runs; none where the simulation does not look at it. */
    List<Trial> trials() {
        return trials.values().stream().flatMap(List::stream).toList();
    }

    /** How a segment fares at a scale; null where that could not be tried or leaves the segment as it is. */
    @Nullable
    Strain strain(Scale scale, int segment) {
        return trials.getOrDefault(scale, List.of()).stream()
                .filter(trial -> trial.segment() == segment)
                .map(Trial::strain)
                .findFirst()
                .orElse(null);
    }
}
