package dropline.harness.pitfile;

import dropline.bus.pit.Pit;
import dropline.harness.yaml.Place;
import dropline.harness.yaml.Report;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * The figures that the timing of a pit rests on, each with its origin, and what the pit would be if one of them were
 * another.
 */
public final class Figures {
    private final Block root;
    private final Map<Place, Figure> byPlace;
    private final Map<Figure, Place> places = new LinkedHashMap<>();

    private Figures(Block root, Map<Place, Figure> byPlace) {
        this.root = root;
        this.byPlace = byPlace;
        byPlace.forEach((place, figure) -> places.put(figure, place));
    }

    /** Those that the parts of a pit use. */
    static Figures of(Parts parts, Map<Place, String> paths) {
        Map<Place, Block.Written> used = new LinkedHashMap<>();
        Map<Place, Set<String>> segments = new LinkedHashMap<>();
        for (Block segment : parts.root().blocks(BusKeys.SEGMENTS)) {
            List<Block> blocks = new ArrayList<>(List.of(segment));
            segment.block(BusKeys.CONTROLLER)
                    .flatMap(c -> c.written(BusKeys.CONTROLLER_HUB))
                    .flatMap(hub -> parts.hub(hub.text()))
                    .ifPresent(blocks::add);
            for (Block node : parts.nodesOn(segment)) {
                blocks.add(node);
                blocks.addAll(parts.panelsOn(node));
            }
            for (Block block : blocks) {
                block.figures(written -> {
                    used.putIfAbsent(written.place(), written);
                    segments.computeIfAbsent(written.place(), p -> new LinkedHashSet<>())
                            .add(segment.name());
                });
            }
        }
        Map<Place, Figure> figures = new LinkedHashMap<>();
        used.forEach((place, written) -> figures.put(
                place,
                new Figure(
                        paths.getOrDefault(place, written.key()),
                        written.text(),
                        written.origin(),
                        place.file() + ":" + place.line() + ":" + place.column(),
                        List.copyOf(Objects.requireNonNull(segments.get(place))))));
        return new Figures(parts.root(), figures);
    }

    /** All of them, in the order in which the pit comes upon them. */
    public List<Figure> all() {
        return List.copyOf(byPlace.values());
    }

    /** Those of one origin. */
    public List<Figure> of(Origin origin) {
        return byPlace.values().stream().filter(f -> f.origin() == origin).toList();
    }

    /** How many are of an origin. */
    public int count(Origin origin) {
        return of(origin).size();
    }

    /** The pit with one figure scaled; empty where that would break a rule of the pit file, or change nothing. */
    public Optional<Pit> scaled(Figure figure, Scale scale) {
        Place place = places.get(figure);
        if (place == null) {
            throw new IllegalArgumentException("a figure to scale must be one of the pit's: figure=" + figure);
        }
        Report report = new Report();
        Parts parts = new Parts(root.scaled(place, scale, report));
        PitChecks.check(parts, report);
        if (!report.isEmpty()) {
            return Optional.empty();
        }
        Pit pit = new PitBuilder(parts).pit();
        new FitChecks(parts, pit, report).check();
        return report.isEmpty() ? Optional.of(pit) : Optional.empty();
    }
}
