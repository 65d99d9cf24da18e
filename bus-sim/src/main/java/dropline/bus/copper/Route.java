package dropline.bus.copper;

import dropline.bus.pit.Cable;
import dropline.bus.pit.Cable.Arm;
import dropline.bus.pit.Fitting.Reach;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Wire;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** How far it is from stop to stop of a pair. Lengths are in metres, NaN where the pit file leaves one open. */
final class Route {
    private final Segment segment;
    private final Wire wire;

    Route(Segment segment) {
        this.segment = segment;
        this.wire = segment.cable().wire();
    }

    /** From the stop before it on the cable. */
    private double after(int stop) {
        double own = reach(stop).afterMetres();
        return Double.isNaN(own) ? wire.stepMetres() : own;
    }

    /** From the cable to the board; a controller has none. */
    double stub(int stop) {
        if (stop == Cable.CONTROLLER) {
            return 0;
        }
        double own = reach(stop).stubMetres();
        return Double.isNaN(own) ? wire.stubMetres() : own;
    }

    private Reach reach(int stop) {
        return stop == Cable.CONTROLLER
                ? Reach.AS_THE_SEGMENT
                : segment.nodes().get(stop).fitting().reach();
    }

    /** The stretches of an arm; one that does not hold the controller begins at it. */
    List<Span> spans(Arm arm) {
        List<Span> spans = new ArrayList<>();
        boolean joined = !arm.stops().contains(Cable.CONTROLLER);
        int from = joined ? Cable.CONTROLLER : arm.stops().get(0);
        for (int stop :
                joined ? arm.stops() : arm.stops().subList(1, arm.stops().size())) {
            spans.add(new Span(from, stop, after(stop)));
            from = stop;
        }
        return spans;
    }

    /** From one end of an arm to the other; NaN where any of it is unknown. */
    double metres(Arm arm) {
        return spans(arm).stream().mapToDouble(Span::metres).sum();
    }

    /** Arms from the longest on: by their metres where all are known, else by their number of boards. */
    Comparator<Arm> longestFirst(List<Arm> arms) {
        boolean known = arms.stream().noneMatch(arm -> Double.isNaN(metres(arm)));
        return known
                ? Comparator.comparingDouble(this::metres).reversed()
                : Comparator.comparingInt((Arm arm) -> arm.stops().size()).reversed();
    }
}
