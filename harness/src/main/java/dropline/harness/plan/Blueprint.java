package dropline.harness.plan;

import dropline.bus.pit.Hub;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The whole pit as planned. Segments keep their order, and a further one follows what it is like. One that is like a
 * segment on a hub board is on the same board; one that is like any other gets a hub, or an adapter, of its own.
 */
final class Blueprint {
    private final Pit before;
    private final List<Segment> segments = new ArrayList<>();
    private final List<SegmentChange> changes = new ArrayList<>();
    private final Map<Integer, Fit> fits = new LinkedHashMap<>();
    private final Map<String, List<Integer>> onHub = new LinkedHashMap<>();
    private final List<Hub> furtherHubs = new ArrayList<>();

    Blueprint(Pit before, Draft draft, List<Fit> all) {
        this.before = before;
        for (int s = 0; s < before.segments().size(); s++) {
            int index = s;
            Segment now = before.segments().get(s);
            List<Fit> here = all.stream()
                    .filter(fit -> fit.group().segment() == index)
                    .sorted((one, other) ->
                            Boolean.compare(one.group().further(), other.group().further()))
                    .toList();
            if (!now.isShared()) {
                put(s, now, null);
            } else if (here.stream().allMatch(fit -> fit.group().further())) {
                changes.add(new SegmentChange(now.name(), null, null));
            }
            for (Fit fit : here) {
                boolean further = fit.group().further();
                String name = further ? free(now.name()) : now.name();
                Segment planned = draft.segment(fit.group(), fit.settings(), name);
                fits.put(segments.size(), fit);
                String hub = put(s, planned, further ? now.name() : null);
                changes.add(new SegmentChange(now.name(), planned, hub));
            }
        }
    }

    /** Adds a segment; tells the hub of its own that it got. */
    private @Nullable String put(int before, Segment segment, @Nullable String like) {
        Hub hub = this.before.hubOf(before);
        String own = null;
        if (hub != null && like != null && hub.kind() != Hub.Kind.BOARD) {
            own = freeHub(hub.name());
            furtherHubs.add(new Hub(own, hub.kind(), hub.turnNanos(), List.of(segments.size())));
        } else if (hub != null) {
            onHub.computeIfAbsent(hub.name(), name -> new ArrayList<>()).add(segments.size());
        }
        segments.add(segment);
        return own;
    }

    private String free(String name) {
        Stream<String> planned = segments.stream().map(Segment::name);
        Stream<String> present = before.segments().stream().map(Segment::name);
        return free(name, Stream.concat(planned, present).toList());
    }

    private String freeHub(String name) {
        return free(
                name,
                Stream.concat(before.hubs().stream(), furtherHubs.stream())
                        .map(Hub::name)
                        .toList());
    }

    private static String free(String name, List<String> taken) {
        String between = Character.isDigit(name.charAt(name.length() - 1)) ? "-" : " ";
        int number = 2;
        while (taken.contains(name + between + number)) {
            number++;
        }
        return name + between + number;
    }

    Pit pit() {
        List<Hub> hubs = new ArrayList<>();
        before.hubs().forEach(hub -> hubs.add(hub.with(onHub.getOrDefault(hub.name(), List.of()))));
        hubs.addAll(furtherHubs);
        return before.with(segments, hubs);
    }

    /** What made each planned segment, by its index; none for those straight on USB. */
    Map<Integer, Fit> fits() {
        return fits;
    }

    List<SegmentChange> changes() {
        return changes;
    }
}
