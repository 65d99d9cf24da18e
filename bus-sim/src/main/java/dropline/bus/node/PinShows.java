package dropline.bus.node;

import dropline.bus.avr.board.Board;
import dropline.bus.avr.board.Pin;
import dropline.bus.indicator.Shows;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Program;
import dropline.bus.pit.Program.Lead;
import dropline.bus.pit.Signal;
import org.jspecify.annotations.Nullable;

/**
 * When an emulated board has put a value on an indicator: a lamp's pin stands as the value says, a motor's pins change
 * for the first time after its frame was heard, or the program says so in a register. What the indicator then takes by
 * itself is the model's.
 */
final class PinShows {
    private final Board board;
    private final Shows shows;
    private final Place[] places;

    /** A place where a signal is shown. */
    private static final class Place {
        final int slot;
        final Signal signal;
        final Indicator indicator;
        final @Nullable Lead lead;
        int serial;
        int done;
        long value;
        long doneValue;
        long heardNanos;
        int sequence;
        boolean isLit;

        Place(int slot, Signal signal, Indicator indicator, @Nullable Lead lead) {
            this.slot = slot;
            this.signal = signal;
            this.indicator = indicator;
            this.lead = lead;
            doneValue = least();
        }

        long least() {
            return Math.round(signal.min() / signal.resolution());
        }

        boolean waits() {
            return serial > done;
        }

        /** Whether a motor need not take a step for the value that waits. */
        boolean isThere() {
            double step = indicator.motion().step() / signal.resolution();
            return step > 0 && Math.round(value / step) == Math.round(doneValue / step);
        }
    }

    PinShows(Pit pit, Layout layout, int node, Program program, Board board, Shows shows) {
        this.board = board;
        this.shows = shows;
        places = new Place[layout.slots().size()];
        for (int s = 0; s < places.length; s++) {
            Layout.Slot slot = layout.slots().get(s);
            if (slot.node() == node) {
                Lead lead = program.lead(slot.panel().name(), slot.indicator().name());
                places[s] = new Place(s, pit.signals().get(slot.signal()), slot.indicator(), lead);
                watch(places[s]);
            }
        }
        if (program.appliedRegister() != Program.NONE) {
            board.chip().note(program.appliedRegister(), (value, cycle) -> applied(value, board.nanos(cycle)));
        }
    }

    /** How many pins an indicator of a kind hangs on: least and most; {0, 0} where that is not modelled. */
    static int[] pins(Indicator.Kind kind) {
        return switch (kind) {
            case LAMP, FILAMENT_LAMP, FLAG, BACKLIGHT_ZONE -> new int[] {1, 1};
            case GAUGE_STEPPER, STEPPER, DRUM_COUNTER -> new int[] {1, 4};
            default -> new int[] {0, 0};
        };
    }

    private void watch(Place place) {
        Lead lead = place.lead;
        if (lead == null) {
            return;
        }
        place.isLit = lead.isLow();
        for (Pin pin : lead.pins()) {
            board.chip().port(pin.port()).watch((levels, changed, cycle) -> {
                if ((changed >> pin.bit() & 1) != 0) {
                    place.isLit = (levels >> pin.bit() & 1) == 0 == lead.isLow();
                    turned(place, board.nanos(cycle));
                }
            });
        }
    }

    /** The board's program may have a value from now on. */
    void heard(int slot, int serial, long value, int sequence, long heardNanos) {
        Place place = places[slot];
        if (serial <= place.serial) {
            return;
        }
        place.serial = serial;
        place.value = value;
        place.sequence = sequence;
        place.heardNanos = heardNanos;
        if (place.lead != null && (place.indicator.kind().moves() ? place.isThere() : isAsItShould(place))) {
            show(place, heardNanos);
        }
    }

    private static boolean isAsItShould(Place place) {
        return place.isLit == place.value > place.least();
    }

    private void turned(Place place, long nanos) {
        if (place.waits() && (place.indicator.kind().moves() || isAsItShould(place))) {
            show(place, nanos);
        }
    }

    /** The program says that it has put a broadcast's values, and those of all before it, on its indicators. */
    private void applied(int sequence, long nanos) {
        for (Place place : places) {
            if (place != null && place.lead == null && place.waits() && (byte) (sequence - place.sequence) >= 0) {
                show(place, nanos);
            }
        }
    }

    private void show(Place place, long nanos) {
        place.done = place.serial;
        place.doneValue = place.value;
        shows.apply(place.slot, place.serial, place.value, Math.max(nanos, place.heardNanos), place.heardNanos);
    }

    /** The board restarts, and knows nothing any more. */
    void forget() {
        for (Place place : places) {
            if (place != null) {
                place.serial = 0;
                place.done = 0;
            }
        }
    }
}
