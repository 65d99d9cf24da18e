package dropline.bus.node;

import dropline.bus.avr.board.Contacts;
import dropline.bus.avr.chip.Pin;
import dropline.bus.control.Wired;
import dropline.bus.pit.Control;
import dropline.bus.pit.Program.Lead;

/**
 * Moves what hangs on an emulated board's pins. A contact that closes or opens bounces: it goes back and forth twice
 * over its bounce time. An encoder goes through four quarters a step, two milliseconds apart as by a quick hand, both
 * contacts open where it rests. An axis or a lever stands at its position on the converter's scale.
 */
final class Hands {
    private static final long QUARTER_NANOS = 2_000_000;
    private static final int BOUNCES = 4;
    private static final int GREATEST = 1023;

    /** Which of an encoder's two contacts are closed, a quarter after the other. */
    private static final int[] QUARTERS = {0, 1, 3, 2};

    private final Contacts contacts;

    Hands(Contacts contacts) {
        this.contacts = contacts;
    }

    /** The hand that moves a control, which is put where it stands at first. */
    Wired.Hand of(Control control, Lead lead, int standsAt) {
        return switch (control.kind()) {
            case ENCODER -> new Turn(lead);
            case AXIS, LEVER -> {
                put(lead, standsAt);
                yield (at, value, bounce) -> put(lead, value);
            }
            default -> new Throw(control, lead, standsAt);
        };
    }

    /** How many pins a control of a kind hangs on; 0 where that is not modelled. */
    static int pins(Control control) {
        return switch (control.kind()) {
            case TOGGLE, BUTTON, HELD_BUTTON, AXIS, LEVER -> 1;
            case ENCODER, HELD_TOGGLE, THREE_WAY_TOGGLE -> 2;
            case SELECTOR -> control.positions().count();
            case KEY_MATRIX -> 0;
        };
    }

    private void put(Lead lead, int value) {
        contacts.put(lead.pins().get(0), Math.max(0, Math.min(GREATEST, value)));
    }

    private void set(Lead lead, int pin, boolean isClosed, long nanos) {
        contacts.hold(lead.pins().get(pin), isClosed == lead.isLow() ? 0 : 1, nanos);
    }

    /** Contacts of which one at most is closed. */
    private final class Throw implements Wired.Hand {
        private final Control control;
        private final Lead lead;
        private int closed;

        Throw(Control control, Lead lead, int standsAt) {
            this.control = control;
            this.lead = lead;
            closed = closedAt(standsAt);
            for (int pin = 0; pin < lead.pins().size(); pin++) {
                set(lead, pin, pin == closed, contacts.nowNanos());
            }
        }

        /** The pin whose contact is closed at a position, or -1. */
        private int closedAt(int position) {
            return switch (control.kind()) {
                case SELECTOR -> control.positions().held(position);
                case THREE_WAY_TOGGLE -> {
                    int held = control.positions().held(position);
                    yield held == 1 ? -1 : held / 2;
                }
                default -> position - 1;
            };
        }

        @Override
        public void move(long atNanos, int value, long bounceNanos) {
            int next = Math.min(closedAt(value), lead.pins().size() - 1);
            if (next == closed) {
                return;
            }
            boolean isThrown = closed >= 0 && next >= 0;
            if (closed >= 0) {
                bounce(closed, false, atNanos, isThrown ? 0 : bounceNanos);
            }
            if (next >= 0) {
                bounce(next, true, atNanos + (isThrown ? control.positions().openNanos() : 0), bounceNanos);
            }
            closed = next;
        }

        private void bounce(int pin, boolean isClosed, long atNanos, long bounceNanos) {
            set(lead, pin, isClosed, atNanos);
            for (int i = 1; i <= BOUNCES && bounceNanos > 0; i++) {
                set(lead, pin, isClosed == (i % 2 == 0), atNanos + i * bounceNanos / BOUNCES);
            }
        }
    }

    /** Two contacts a quarter apart. */
    private final class Turn implements Wired.Hand {
        private final Pin first;
        private final Pin second;
        private final Lead lead;
        private long busyUntil = Long.MIN_VALUE / 2;
        private int stands;

        Turn(Lead lead) {
            this.lead = lead;
            first = lead.pins().get(0);
            second = lead.pins().get(1);
            set(lead, 0, false, contacts.nowNanos());
            set(lead, 1, false, contacts.nowNanos());
        }

        @Override
        public void move(long atNanos, int value, long bounceNanos) {
            int way = Integer.signum(value - stands);
            long at = Math.max(atNanos, busyUntil);
            for (int quarter = 4 * stands + way; quarter != 4 * value + way && way != 0; quarter += way) {
                int closed = QUARTERS[Math.floorMod(quarter, QUARTERS.length)];
                contacts.hold(first, (closed & 1) != 0 == lead.isLow() ? 0 : 1, at);
                contacts.hold(second, (closed & 2) != 0 == lead.isLow() ? 0 : 1, at);
                at += QUARTER_NANOS;
            }
            busyUntil = at;
            stands = value;
        }
    }
}
