package dropline.bus.run;

import dropline.bus.control.Controls;
import dropline.bus.indicator.Shows;
import org.jspecify.annotations.Nullable;

/**
 * The instants at which a segment's indicators and controls do something of their own accord, since they take time for
 * what they do or something is wrong with them.
 */
final class PartSteps {
    private final Shows shows;
    private final Controls controls;

    private PartSteps(Shows shows, Controls controls) {
        this.shows = shows;
        this.controls = controls;
    }

    /** Null if neither does. */
    static @Nullable PartSteps of(Shows shows, Controls controls) {
        return shows.mustStep() || controls.mustStep() ? new PartSteps(shows, controls) : null;
    }

    /** When one of them does something next, ns; {@link Long#MAX_VALUE} if none will. */
    long nextNanos() {
        return Math.min(shows.nextNanos(), controls.nextNanos());
    }

    /** Lets that happen. */
    void step() {
        if (shows.nextNanos() <= controls.nextNanos()) {
            shows.step();
        } else {
            controls.step();
        }
    }
}
