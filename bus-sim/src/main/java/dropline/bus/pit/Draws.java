package dropline.bus.pit;

/**
 * The current that a part takes, by what it does.
 *
 * @param active lit, showing, or moving
 * @param rest dark, blank, or standing still
 * @param start for a moment when it becomes active; {@link Draw#UNKNOWN} where that is no more than {@code active}
 * @param startNanos how long that moment is, ns
 * @param throughBoard whether its node's board passes the current on from its own converter
 */
public record Draws(Draw active, Draw rest, Draw start, long startNanos, boolean throughBoard) {
    /** Nothing said. */
    public static final Draws UNKNOWN = always(Draw.UNKNOWN, true);

    public Draws {
        if (startNanos < 0 || start.isKnown() != startNanos > 0) {
            throw new IllegalArgumentException(
                    "a start needs a current and a time, or neither: start=" + start + " nanos=" + startNanos);
        }
    }

    /** The same whatever it does. */
    public static Draws always(Draw draw, boolean throughBoard) {
        return new Draws(draw, draw, Draw.UNKNOWN, 0, throughBoard);
    }

    /** The most it takes: starting, if that is more. */
    public Draw greatest() {
        return start.isKnown() && start.microamps() > active.microamps() ? start : active;
    }
}
