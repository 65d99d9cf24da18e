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
import java.util.List;

/**
 * What goes wrong on a segment at instants of its own: restarts, stalls, babble, bursts of noise, drivers that stick, a
 * bias that is lost. Also which of the controller's state frames go out damaged, and whether it hears itself.
 */
final class Troubles {
    private static final long NEVER = Long.MAX_VALUE;
    private static final long USUAL_BOOT_NANOS = 1_500_000_000;

    private final List<Fault> events = new ArrayList<>();
    private final List<StrikeTimes> times = new ArrayList<>();
    private final List<Frame> babbles = new ArrayList<>();
    private final List<Fault> switches = new ArrayList<>();
    private final List<Frame> stuck = new ArrayList<>();
    private final List<Long> switchTimes = new ArrayList<>();
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
        findNext();
    }

    private void add(Fault fault, Segment segment, long seed) {
        String name = fault.node() < 0
                ? segment.name()
                : layout.nodes().get(fault.node()).node().name();
        switch (fault.kind()) {
            case RESET, BROWN_OUT, BLACKOUT, LOOP_STALL, NOISE_BURST, BABBLING_NODE -> {
                events.add(fault);
                times.add(new StrikeTimes(fault, seed, name));
                babbles.add(new Frame(fault.node(), 0, UartClock.exact(segment.baud()), segment.format()));
            }
            case STUCK_DRIVER, MISSING_BIAS -> {
                switches.add(fault);
                switchTimes.add(fault.fromNanos());
                stuck.add(new Frame(fault.node(), 0, UartClock.exact(segment.baud()), segment.format()));
            }
            case LOST_STATE_FRAME -> damages.add(new Chance(fault, seed, name));
            case ECHO -> echoes.add(fault);
            default -> {}
        }
    }

    /** When something goes wrong next, ns. */
    long nextNanos() {
        return next;
    }

    /** Lets it go wrong. */
    void step() {
        for (int i = 0; i < events.size(); i++) {
            if (times.get(i).nextNanos() == next) {
                strike(events.get(i), i);
                times.get(i).pass();
            }
        }
        for (int i = 0; i < switches.size(); i++) {
            if (switchTimes.get(i) == next) {
                turn(switches.get(i), i);
            }
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
        next = NEVER;
        for (StrikeTimes time : times) {
            next = Math.min(next, time.nextNanos());
        }
        for (long time : switchTimes) {
            next = Math.min(next, time);
        }
    }

    private void strike(Fault fault, int index) {
        long until = next + fault.amount();
        switch (fault.kind()) {
            case RESET -> reset(stations.position(fault.node()), fault.amount());
            case BROWN_OUT -> {
                for (int position = 0; position < stations.count(); position++) {
                    reset(position, fault.amount());
                }
            }
            case BLACKOUT -> stations.stall(stations.position(fault.node()), Indicator.Blocks.INTERRUPTS, next, until);
            case LOOP_STALL -> stations.stall(stations.position(fault.node()), Indicator.Blocks.LOOP, next, until);
            case NOISE_BURST -> noise.burst(next, until);
            case BABBLING_NODE -> babble(fault, babbles.get(index));
            default -> throw new AssertionError(fault);
        }
    }

    private void reset(int position, long amountNanos) {
        int node = stations.node(position);
        long boot = layout.nodes().get(node).node().profile().bootNanos();
        long takes = amountNanos > 0 ? amountNanos : boot > 0 ? boot : USUAL_BOOT_NANOS;
        stations.reset(position, next, next + takes);
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

    private void turn(Fault fault, int index) {
        boolean begins = next == fault.fromNanos();
        switchTimes.set(index, begins && fault.kind() == FaultKind.MISSING_BIAS ? fault.untilNanos() : (Long) NEVER);
        if (fault.kind() == FaultKind.MISSING_BIAS) {
            noise.loseBias(begins);
        } else {
            stuck.get(index).drive(next, fault.untilNanos());
            wire.begin(stuck.get(index));
        }
    }
}
