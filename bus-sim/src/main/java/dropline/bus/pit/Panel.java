package dropline.bus.pit;

import java.util.List;

/**
 * What a person sees and touches.
 *
 * @param name unique in the pit
 * @param place where it is mounted, for people; may be empty
 * @param status built, on the bench, or planned
 * @param indicators what it shows with
 * @param controls what can be moved on it
 * @param budget the limits it is judged against
 * @param draws what it draws from its node's supply beside the node
 */
public record Panel(
        String name,
        String place,
        Status status,
        List<Indicator> indicators,
        List<Control> controls,
        Budget budget,
        Draw draws) {

    /** How far a panel has come. */
    public enum Status {
        BUILT,
        BENCH,
        PLANNED
    }

    public Panel {
        indicators = List.copyOf(indicators);
        controls = List.copyOf(controls);
    }

    /** One of whose current nothing is said. */
    public Panel(
            String name,
            String place,
            Status status,
            List<Indicator> indicators,
            List<Control> controls,
            Budget budget) {
        this(name, place, status, indicators, controls, budget, Draw.UNKNOWN);
    }
}
