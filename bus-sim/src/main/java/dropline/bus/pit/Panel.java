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
 * @param draws what all of it draws beside its node's board, if that is stated; else its indicators say
 */
public record Panel(
        String name,
        String place,
        Status status,
        List<Indicator> indicators,
        List<Control> controls,
        Budget budget,
        Draws draws) {

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
        this(name, place, status, indicators, controls, budget, Draws.UNKNOWN);
    }

    /** What it draws while it runs: what is stated of it, else the sum of its indicators' if each is known. */
    public Draw running() {
        return draws.active().isKnown()
                ? draws.active()
                : indicators.stream()
                        .map(indicator -> indicator.draws().active())
                        .reduce(Draw::plus)
                        .orElse(Draw.UNKNOWN);
    }
}
