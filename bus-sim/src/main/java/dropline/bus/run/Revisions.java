package dropline.bus.run;

import dropline.bus.control.Controls;
import dropline.bus.indicator.Shows;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import org.jspecify.annotations.Nullable;

/** Asks who planned an event whether it still holds. */
final class Revisions implements EventOrder.Revision {
    private final Shows shows;
    private @Nullable Controls controls;

    Revisions(Shows shows) {
        this.shows = shows;
    }

    void controls(Controls made) {
        controls = made;
    }

    @Override
    public boolean holds(Rank rank, long atNanos, int index, int serial) {
        return rank == Rank.SAMPLED
                ? controls == null || controls.holds(rank, atNanos, index, serial)
                : shows.holds(rank, atNanos, index, serial);
    }
}
