package dropline.bus.run;

import dropline.bus.clock.UartClock;
import dropline.bus.fault.Chance;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.fault.StrikeTimes;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Segment;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Noise;
import dropline.bus.wire.Wire;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What goes wrong on a segment at instants of its own: restarts, stalls, babble, bursts of noise, drivers that stick, a
 * bias that is lost. Also which of the controller's state frames go out damaged, and whether it hears itself.
 */
final class Troubles {
    private static final long NEVER = Long.MAX_VALUE;
    private static final long USUAL_BOOT_NANOS = 1_500_000_000;

    /** What strikes at instants, and the frame a babbling node has for it. */
    private record Event(Fault fault, StrikeTimes times, Frame babble) {}

    /** What begins at an instant, and the frame of a driver that sticks. */
    private record Change(Fault fault, boolean begins, Frame stuck) {
        long nanos() {
            return begins ? fault.fromNanos() : fault.untilNanos();
        }
    }

    private final List<Event> events = new ArrayList<>();
    /** Those to come, in order of time. */
    private final List<Change> changes = new ArrayList<>();

    private final List<Chance> damages = new ArrayList<>();
    private final List<Fault> echoes = new ArrayList<>();
    private final Layout layout;
    private final Stations stations;
    private final Wire wire;
    private final Noise noise;
    private long next = NEVER;

    Troubles(
            List<Fault> faults,
            Segment segment,
            int segmentIndex,
            Layout layout,
            long seed,
            Stations stations,
            Wire wire,
            Noise noise) {
        this.layout = layout;
        this.stations = stations;
        this.wire = wire;
        this.noise = noise;
        for (Fault fault : faults) {
            if (fault.segment() == segmentIndex) {
                add(fault, segment, seed);
            }
        }
        changes.sort(Comparator.comparingLong(Change::nanos));
        findNext();
    }

    private void add(Fault fault, Segment segment, long seed) {
        String name = fault.node() < 0
                ? segment.name()
                : layout.nodes().get(fault.node()).node().name();
        switch (fault.kind()) {
            case RESET, BROWN_OUT, BLACKOUT, LOOP_STALL, NOISE_BURST, BABBLING_NODE ->
                events.add(new Event(fault, new StrikeTimes(fault, seed, name), own(fault, segment)));
            case STUCK_DRIVER -> changes.add(new Change(fault, true, own(fault, segment)));
            case MISSING_BIAS -> {
                changes.add(new Change(fault, true, own(fault, segment)));
                changes.add(new Change(fault, false, own(fault, segment)));
            }
            case LOST_STATE_FRAME -> damages.add(new Chance(fault, seed, name));
            case ECHO -> echoes.add(fault);
            default -> {}
        }
    }

    private static Frame own(Fault fault, Segment segment) {
        return new Frame(fault.node(), 0, UartClock.exact(segment.baud()), segment.format());
    }

    /** When something goes wrong next, ns. */
    long nextNanos() {
        return next;
    }

    /** Lets it go wrong. */
    void step() {
        for (Event event : events) {
            if (event.times().nextNanos() == next) {
                strike(event);
                event.times().pass();
            }
        }
        while (!changes.isEmpty() && changes.get(0).nanos() == next) {
            turn(changes.remove(0));
        }
        findNext();
    }

    /** Whether a frame with state that goes out at an instant is damaged. */
    boolean damages(long atNanos, long ordinal) {
        for (int i = 0; i < damages.size(); i++) {
            if (damages.get(i).strikes(atNanos, ordinal)) {
                return true;
            }
        }
        return false;
    }

    /** Whether the controller hears what it sends. */
    boolean echoes(long atNanos) {
        for (int i = 0; i < echoes.size(); i++) {
            if (echoes.get(i).spans(atNanos)) {
                return true;
            }
        }
        return false;
    }

    private void findNext() {
        next = changes.isEmpty() ? NEVER : changes.get(0).nanos();
        for (Event event : events) {
            next = Math.min(next, event.times().nextNanos());
        }
    }

    private void strike(Event event) {
        Fault fault = event.fault();
        long until = next + fault.amount();
        switch (fault.kind()) {
            case RESET -> reset(stations.position(fault.node()), fault.amount(), next);
            case BROWN_OUT -> {
                for (int position = 0; position < stations.count(); position++) {
                    reset(position, fault.amount(), next);
                }
            }
            case BLACKOUT -> stations.stall(stations.position(fault.node()), Indicator.Blocks.INTERRUPTS, next, until);
            case LOOP_STALL -> stations.stall(stations.position(fault.node()), Indicator.Blocks.LOOP, next, until);
            case NOISE_BURST -> noise.burst(next, until);
            case BABBLING_NODE -> babble(fault, event.babble());
            default -> throw new AssertionError(fault);
        }
    }

    /** Every board restarts, and takes as long as it does. */
    void restart(long atNanos) {
        for (int position = 0; position < stations.count(); position++) {
            reset(position, 0, atNanos);
        }
    }

    private void reset(int position, long amountNanos, long atNanos) {
        int node = stations.node(position);
        long boot = layout.nodes().get(node).node().profile().bootNanos();
        long takes = amountNanos > 0 ? amountNanos : boot > 0 ? boot : USUAL_BOOT_NANOS;
        stations.reset(position, atNanos, atNanos + takes);
    }

    private void babble(Fault fault, Frame frame) {
        if (next < frame.driverOffNanos || stations.isTalking(stations.position(fault.node()), next)) {
            return;
        }
        frame.kind = Frame.BABBLE;
        frame.node = fault.node();
        frame.transaction = 0;
        frame.time(next, (int) fault.amount(), 0, 0);
        wire.begin(frame);
    }

    private void turn(Change change) {
        if (change.fault().kind() == FaultKind.MISSING_BIAS) {
            noise.loseBias(change.begins());
        } else {
            change.stuck().drive(next, change.fault().untilNanos());
            wire.begin(change.stuck());
        }
    }
}
