package dropline.bus.supply;

import dropline.bus.pit.Draws;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Motion.Zeroing;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What a pit's parts take, from its supplies' being switched on until every board is up and every zero found: a model,
 * by boot times, longest ways to a zero and starting currents. Boards take their current at once, displays come on with
 * their boards' supply, motors wait for their board's program.
 */
public final class PowerOn {
    private final Pit pit;
    private final Layout layout;
    private final long delayNanos;
    private final List<Phase> phases = new ArrayList<>();
    private int part;
    private long upNanos;
    private long zeroedNanos;

    /** Why a part takes more for a while. */
    public enum Why {
        DISPLAYS_COME_ON,
        MOTORS_LOOK_FOR_THEIR_ZERO,
        SERVOS_JUMP
    }

    /**
     * A part takes more for a while.
     *
     * @param part counts the parts, from 0: one that starts and then runs on has several phases
     * @param node index in {@link Layout#nodes()}
     * @param throughBoard whether its board passes the current on
     * @param microamps by how much more than while it rests, uA
     */
    public record Phase(
            Why why, int part, int node, boolean throughBoard, long fromNanos, long untilNanos, long microamps) {}

    private PowerOn(Pit pit, long delayNanos) {
        this.pit = pit;
        this.delayNanos = delayNanos;
        layout = Layout.of(pit);
    }

    /** @param delayNanos how long each board's motors wait for every address before its own; 0 for all at once */
    public static PowerOn of(Pit pit, long delayNanos) {
        PowerOn start = new PowerOn(pit, delayNanos);
        start.run();
        return start;
    }

    /** In the order of their beginnings. */
    public List<Phase> phases() {
        return phases;
    }

    /** When the last board's program runs, ns. */
    public long upNanos() {
        return upNanos;
    }

    /** When the last zero is found and the last board is up, ns. */
    public long zeroedNanos() {
        return zeroedNanos;
    }

    private void run() {
        for (int n = 0; n < layout.nodes().size(); n++) {
            Node node = layout.nodes().get(n).node();
            long up = node.profile().bootNanos();
            upNanos = Math.max(upNanos, up);
            long starts = up + delayNanos * (node.address() - 1);
            zeroedNanos = Math.max(zeroedNanos, up);
            for (Panel panel : node.panels()) {
                for (Indicator indicator : panel.indicators()) {
                    add(n, panel, indicator, starts);
                    part++;
                }
            }
        }
        phases.sort(Comparator.comparingLong(Phase::fromNanos));
    }

    private void add(int node, Panel panel, Indicator indicator, long startNanos) {
        Signal signal = pit.signals().get(indicator.signals().get(0));
        boolean constant = panel.draws().active().isKnown();
        if (indicator.motion().zeroing() != Zeroing.NONE) {
            long until = startNanos + indicator.motion().longestZeroingNanos(signal);
            zeroedNanos = Math.max(zeroedNanos, until);
            if (!constant) {
                moves(Why.MOTORS_LOOK_FOR_THEIR_ZERO, node, indicator.draws(), startNanos, until);
            }
        } else if (indicator.kind() == Kind.SERVO && !constant) {
            double range = signal.max() - signal.min();
            long until =
                    startNanos + (long) Math.ceil(range / indicator.motion().ratePerSecond() * 1e9);
            moves(Why.SERVOS_JUMP, node, indicator.draws(), startNanos, until);
        } else if (indicator.kind().refreshes()
                && !constant
                && indicator.draws().start().isKnown()) {
            Draws draws = indicator.draws();
            long more = draws.greatest().microamps() - PartCurrent.microamps(draws, 0);
            add(Why.DISPLAYS_COME_ON, node, draws, 0, draws.startNanos(), more);
        }
    }

    private void moves(Why why, int node, Draws draws, long fromNanos, long untilNanos) {
        long more = PartCurrent.microamps(draws, 1) - PartCurrent.microamps(draws, 0);
        add(why, node, draws, fromNanos, untilNanos, more);
        add(why, node, draws, fromNanos, fromNanos + draws.startNanos(), PartCurrent.startMicroamps(draws));
    }

    private void add(Why why, int node, Draws draws, long fromNanos, long untilNanos, long microamps) {
        if (microamps != 0 && untilNanos > fromNanos) {
            phases.add(new Phase(why, part, node, draws.throughBoard(), fromNanos, untilNanos, microamps));
        }
    }
}
