package dropline.bus.control;

import dropline.bus.pit.Control;

/**
 * A control that is really wired: a hand moves it, its node's program reads its contacts, and what that makes of them
 * is known only by what it reports. Remembers the last 32 moves.
 */
public final class Wired {
    private static final int KEPT = 32;
    private static final int MODULUS = 0xFFFF;

    private final Control control;
    private final Hand hand;
    private final int[] serials = new int[KEPT];
    private final int[] values = new int[KEPT];
    private int moves;
    private int stands;

    /** Moves what is wired. */
    @FunctionalInterface
    public interface Hand {
        /**
         * A person moves it.
         *
         * @param value where it goes: a position, or a count; of a button 1 for pressed and 0 for let go
         * @param bounceNanos how long its contacts bounce
         */
        void move(long atNanos, int value, long bounceNanos);
    }

    Wired(Control control, Hand hand) {
        this.control = control;
        this.hand = hand;
        stands = control.kind() == Control.Kind.LEVER
                ? control.detent(control.detents().get(0).position(), 0)
                : 0;
    }

    /** Whether going to a value is a move that ought to be noticed. */
    boolean counts(int value) {
        return switch (control.kind()) {
            case BUTTON -> value != 0;
            case AXIS -> Math.abs(value - stands) > control.deadBand();
            case LEVER -> control.detent(stands, value) != stands;
            default -> true;
        };
    }

    /** Takes note of such a move; tells where it leaves the control. */
    int counted(int serial, int value) {
        stands = control.kind() == Control.Kind.LEVER ? control.detent(stands, value) : value;
        serials[moves % KEPT] = serial;
        values[moves % KEPT] = control.kind() == Control.Kind.BUTTON ? serial : stands;
        moves++;
        return stands;
    }

    void move(long atNanos, int value, long bounceNanos) {
        hand.move(atNanos, value, bounceNanos);
    }

    /** The newest move after a serial that left it at a value, 0 for none. */
    int serialOf(int value, int after) {
        int slack = control.kind().isContact() || control.kind().counts() ? 0 : control.deadBand();
        for (int move = moves - 1; move >= Math.max(0, moves - KEPT) && serials[move % KEPT] > after; move--) {
            int off = (values[move % KEPT] & MODULUS) - (value & MODULUS);
            if (Math.abs(off) <= slack) {
                return serials[move % KEPT];
            }
        }
        return 0;
    }
}
