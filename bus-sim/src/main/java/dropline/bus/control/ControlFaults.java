package dropline.bus.control;

import dropline.bus.fault.Chance;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.fault.FaultKind.Strikes;
import dropline.bus.fault.StrikeTimes;
import dropline.bus.pit.Control;
import dropline.bus.pit.Layout;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What is wrong with a segment's controls: steps and presses not noticed, and changes noticed that nobody made. */
final class ControlFaults {
    private final List<Layout.ControlPlace> places;
    private final @Nullable Chance[] skips;
    private final int[] skipped;
    private final List<SelfMoves> selfMoves = new ArrayList<>();
    private long nextNanos = StrikeTimes.NEVER;

    private ControlFaults(Layout layout, long seed, List<Fault> faults) {
        places = layout.controls();
        skips = new Chance[places.size()];
        skipped = new int[places.size()];
        for (Fault fault : faults) {
            Control control = places.get(fault.part()).control();
            if (!fault.kind().canStrike(control.kind())) {
                throw new IllegalArgumentException("a control's fault must suit what it is: kind=" + fault.kind()
                        + " control=" + control.name() + " is=" + control.kind());
            }
            if (fault.kind() == FaultKind.ENCODER_SKIPS) {
                skips[fault.part()] = new Chance(fault, seed, control.name());
            } else {
                selfMoves.add(new SelfMoves(fault.part(), fault, seed, control.name()));
            }
        }
        findNext();
    }

    /** The faults of a segment's controls, or null if there are none. */
    static @Nullable ControlFaults of(Layout layout, int segment, long seed, List<Fault> faults) {
        List<Fault> mine = new ArrayList<>(faults);
        mine.removeIf(fault -> fault.kind().strikes() != Strikes.CONTROL || fault.segment() != segment);
        return mine.isEmpty() ? null : new ControlFaults(layout, seed, mine);
    }

    /** Whether a node lets a move pass; if so, its count stays so many steps behind from then on. */
    boolean skips(int control, long atNanos, int serial, int steps) {
        Chance chance = skips[control];
        if (chance == null || !chance.strikes(atNanos, serial)) {
            return false;
        }
        skipped[control] += steps;
        return true;
    }

    /** Steps or presses that a node has let pass so far. */
    int skipped(int control) {
        return skipped[control];
    }

    boolean moveThemselves() {
        return !selfMoves.isEmpty();
    }

    /** When a control next seems to move by itself, ns. */
    long nextNanos() {
        return nextNanos;
    }

    /** Lets every control seem to move whose time has come. */
    void step(Controls controls) {
        long at = nextNanos;
        for (SelfMoves moves : selfMoves) {
            if (moves.nextNanos() == at) {
                switch (places.get(moves.control).control().kind()) {
                    case TOGGLE, SELECTOR, THREE_WAY_TOGGLE, HELD_TOGGLE, HELD_BUTTON, KEY_MATRIX ->
                        flicker(at, moves, controls);
                    case BUTTON -> {
                        moves.pass();
                        controls.seem(at, moves.control, controls.value(moves.control) + 1);
                    }
                    case AXIS, LEVER -> {
                        moves.pass();
                        wander(at, moves, controls);
                    }
                    case ENCODER -> throw new AssertionError("an encoder does not move by itself");
                }
            }
        }
        findNext();
    }

    private void flicker(long atNanos, SelfMoves moves, Controls controls) {
        int control = moves.control;
        if (moves.isWayBack()) {
            moves.passBack();
            if (controls.believed(control, atNanos) == moves.seenSerial()) {
                controls.seem(atNanos, control, moves.stood());
            }
            return;
        }
        moves.pass();
        if (moves.isOut()) {
            return;
        }
        int stood = controls.value(control);
        int seen = controls.seem(atNanos, control, elsewhere(places.get(control).control(), stood));
        if (seen != 0) {
            moves.comeBack(atNanos, places.get(control).control().debounceNanos(), seen, stood);
        }
    }

    /** What a contact that opens or closes by itself makes its node read in place of where it stands. */
    private static int elsewhere(Control control, int stood) {
        return switch (control.kind()) {
            case SELECTOR ->
                stood == control.positions().openValue()
                        ? 0
                        : control.positions().openValue();
            case THREE_WAY_TOGGLE -> stood == 1 ? 0 : 1;
            case KEY_MATRIX -> stood ^ 1;
            default -> stood == 0 ? 1 : 0;
        };
    }

    private void wander(long atNanos, SelfMoves moves, Controls controls) {
        int control = moves.control;
        if (places.get(control).control().kind() == Control.Kind.LEVER) {
            rattle(atNanos, control, controls);
            return;
        }
        int deadBand = places.get(control).control().deadBand();
        int truth = controls.reported(control);
        int wander = moves.wander(deadBand);
        int known = controls.value(control);
        int least = truth < 0 ? Integer.MIN_VALUE : 0;
        int reading = truth + wander;
        if (reading < least || Math.abs(reading - known) <= deadBand) {
            reading = truth - wander;
        }
        if (reading < least || Math.abs(reading - known) <= deadBand) {
            reading = truth;
        }
        controls.seem(atNanos, control, reading);
    }

    /** A reading that wanders far enough takes a lever for one in the next detent, and back. */
    private void rattle(long atNanos, int index, Controls controls) {
        Control control = places.get(index).control();
        int truth = controls.reported(index);
        int away = truth;
        for (Control.Detent detent : control.detents()) {
            boolean nearer = Math.abs(detent.position() - truth) < Math.abs(away - truth);
            away = detent.position() != truth && (away == truth || nearer) ? detent.position() : away;
        }
        controls.seem(atNanos, index, controls.value(index) == truth ? away : truth);
    }

    private void findNext() {
        nextNanos = StrikeTimes.NEVER;
        for (SelfMoves moves : selfMoves) {
            nextNanos = Math.min(nextNanos, moves.nextNanos());
        }
    }
}
