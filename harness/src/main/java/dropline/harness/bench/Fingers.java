package dropline.harness.bench;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Control;
import dropline.bus.pit.Layout;
import dropline.harness.recording.StateFeed;
import java.util.ArrayList;
import java.util.List;

/** Somebody who moves a modelled board's controls, one after the other and never two at once. */
final class Fingers implements StateFeed {
    /** From one move to the next: longer than any switch bounces. */
    static final long PERIOD_NANOS = 300_000_000;

    private static final int COUNTED = 0xFFFF;

    /** A control that is moved, under its number in the layout. */
    private record Moved(int index, Control control) {}

    private final List<Moved> moved = new ArrayList<>();
    private long done;

    Fingers(Subject subject) {
        List<Layout.ControlPlace> places = Layout.of(subject.pit()).controls();
        List<Layout.NodePlace> nodes = Layout.of(subject.pit()).nodes();
        for (int c = 0; c < places.size(); c++) {
            Layout.ControlPlace place = places.get(c);
            if (place.segment() == subject.segment()
                    && nodes.get(place.node()).node().name().equals(subject.name())
                    && positions(place.control()) > 1) {
                moved.add(new Moved(c, place.control()));
            }
        }
    }

    /** How many different states it is brought into, or 1 if it is left alone. */
    private static int positions(Control control) {
        return switch (control.kind()) {
            case BUTTON, ENCODER -> COUNTED + 1;
            case TOGGLE -> 2;
            case SELECTOR -> control.positions().count();
            default -> 1;
        };
    }

    /** Whether there is anything to move. */
    boolean isIdle() {
        return moved.isEmpty();
    }

    /** Moves until an instant. */
    static long movesUntil(long nanos) {
        return Math.max(0, nanos / PERIOD_NANOS);
    }

    /** What a control of this number on the wire should be at an instant; -1 if it is left alone. */
    int valueOf(int number, long atNanos) {
        for (int i = 0; i < moved.size(); i++) {
            if (moved.get(i).control().number() == number) {
                return state(i, movesUntil(atNanos));
            }
        }
        return -1;
    }

    private int state(int place, long moves) {
        long own = (moves + moved.size() - 1 - place) / moved.size();
        return (int) (own % positions(moved.get(place).control()));
    }

    @Override
    public boolean fill(StateBlock block, long untilNanos) {
        block.clear();
        while (!moved.isEmpty() && (done + 1) * PERIOD_NANOS < untilNanos) {
            int place = (int) (done++ % moved.size());
            block.addMove(done * PERIOD_NANOS, moved.get(place).index(), state(place, done));
        }
        return !moved.isEmpty();
    }

    @Override
    public void close() {
        // nothing is held open
    }
}
