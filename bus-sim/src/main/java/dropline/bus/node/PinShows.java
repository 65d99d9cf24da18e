package dropline.bus.node;

import dropline.bus.avr.board.Board;
import dropline.bus.avr.chip.Pin;
import dropline.bus.avr.device.Device;
import dropline.bus.indicator.Shows;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Program;
import dropline.bus.pit.Program.Attached;
import dropline.bus.pit.Program.Lead;
import dropline.bus.pit.Signal;
import java.util.ArrayList;
import java.util.List;

/**
 * When an emulated board has put a value on an indicator: a lamp's pin stands as the value says; a motor's pins change
 * for the first time after its frame was heard, and so does what a display shows; or the program says so in a register.
 * What the indicator then takes by itself is the model's.
 */
final class PinShows {
    private final Board board;
    private final Shows shows;
    private final Place[] places;

    /** How one sees that a value has been put on an indicator. */
    private enum Sign {
        /** It is lit, or dark, as the value says. */
        LIT,
        /** A motor moves, unless the value is less than a step away. */
        MOVES,
        /** What is shown becomes another. */
        CHANGES,
        /** The program says so. */
        TOLD
    }

    /** A place where a signal is shown. */
    private static final class Place {
        final int slot;
        final Signal signal;
        final Indicator indicator;
        Sign sign = Sign.TOLD;
        int serial;
        int done;
        long value;
        long doneValue;
        long heardNanos;
        int sequence;
        boolean isLit;

        Place(int slot, Signal signal, Indicator indicator) {
            this.slot = slot;
            this.signal = signal;
            this.indicator = indicator;
            doneValue = least();
        }

        long least() {
            return Math.round(signal.min() / signal.resolution());
        }

        boolean waits() {
            return serial > done;
        }

        /** Whether it stands already as its value says. */
        boolean isThere() {
            return switch (sign) {
                case LIT -> isLit == value > least();
                case MOVES -> isWithinAStep();
                case CHANGES, TOLD -> false;
            };
        }

        private boolean isWithinAStep() {
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
                places[s] = new Place(s, pit.signals().get(slot.signal()), slot.indicator());
            }
        }
        program.leads().forEach(lead -> named(layout, lead.panel(), lead.part()).forEach(place -> watch(place, lead)));
        program.devices().forEach(device -> attach(device, layout));
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

    private List<Place> named(Layout layout, String panel, String part) {
        List<Place> found = new ArrayList<>();
        for (Place place : places) {
            if (place != null
                    && place.indicator.name().equals(part)
                    && layout.slots().get(place.slot).panel().name().equals(panel)) {
                found.add(place);
            }
        }
        return found;
    }

    private void watch(Place place, Lead lead) {
        place.sign = place.indicator.kind().moves() ? Sign.MOVES : Sign.LIT;
        place.isLit = lead.isLow();
        for (Pin pin : lead.pins()) {
            board.chip().port(pin.port()).watch((levels, changed, cycle) -> {
                if ((changed >> pin.bit() & 1) != 0) {
                    seen(place, (levels >> pin.bit() & 1) == 0 == lead.isLow(), cycle);
                }
            });
        }
    }

    private void attach(Attached device, Layout layout) {
        List<List<Place>> shown = device.shows().stream()
                .map(place -> named(layout, place.panel(), place.part()))
                .toList();
        boolean hasOutputs = device.kind() == Device.Kind.PORT_EXPANDER;
        for (List<Place> one : shown) {
            for (Place place : one) {
                place.sign = hasOutputs ? Sign.LIT : Sign.CHANGES;
                place.isLit = !device.isLow();
            }
        }
        device.tie(board.chip(), (levels, cycle) -> {
            for (int output = 0; output < shown.size(); output++) {
                for (Place place : shown.get(output)) {
                    seen(place, (levels >> output & 1) == 0 == device.isLow(), cycle);
                }
            }
        });
    }

    /** Something has changed where a place is. */
    private void seen(Place place, boolean isLit, long cycle) {
        place.isLit = isLit;
        if (place.waits() && (place.sign != Sign.LIT || place.isThere())) {
            show(place, board.nanos(cycle));
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
        if (place.isThere()) {
            show(place, heardNanos);
        }
    }

    /** The program says that it has put a frame's values, and those of all before it, on its indicators. */
    private void applied(int sequence, long nanos) {
        for (Place place : places) {
            if (place != null && place.sign == Sign.TOLD && place.waits() && (byte) (sequence - place.sequence) >= 0) {
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
