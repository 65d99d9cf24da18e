package dropline.bus.pit;

/**
 * Something a person moves. It travels as state: a position, or a count modulo 2^16, so that a lost or repeated reply
 * loses nothing.
 *
 * @param name unique in the pit
 * @param kind what it is
 * @param number number on the wire, 0..65535
 * @param debounceNanos how long a contact must hold still before the node believes it, ns
 * @param bounceNanos longest time its contact bounces after a move, ns
 * @param deadBand axis: moves up to this many units are not reported; else 0
 */
public record Control(String name, Kind kind, int number, long debounceNanos, long bounceNanos, int deadBand) {

    /** What a control is. */
    public enum Kind {
        /** Stays where it is put: position. */
        TOGGLE,
        /** Counted when pressed, modulo 2^16. */
        BUTTON,
        /** Counted on its node, modulo 2^16. */
        ENCODER,
        /** Position with a dead band. */
        AXIS
    }

    public Control {
        if (debounceNanos < 0 || bounceNanos < 0 || deadBand < 0) {
            throw new IllegalArgumentException("times and dead band must not be negative: debounce=" + debounceNanos
                    + " bounce=" + bounceNanos + " deadBand=" + deadBand);
        }
    }
}
