package dropline.bus.node;

import dropline.bus.avr.board.Board;
import dropline.bus.avr.board.Contacts;
import dropline.bus.control.Controls;
import dropline.bus.fault.Fault;
import dropline.bus.indicator.Shows;
import dropline.bus.pit.Control;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Program;
import dropline.bus.pit.Segment;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.protocol.NodeStatus;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A board that runs its own program. What it hears and says goes over the pair bit by bit, not through here; here is
 * known what it ought to have heard, and so what its pins then show.
 */
public final class EmulatedNode implements NodeBehaviour {
    private final int index;
    private final Board board;
    private final Frame said;
    private final EventOrder events;
    private final Shows shows;
    private final PinShows pins;
    private final int[][] slots;
    private final @Nullable Ailments ailments;
    private long readyNanos;

    /**
     * @param index this node in {@link Layout#nodes()}
     * @param faults of the whole run; those of other nodes are left out
     * @param slotsOfPick for each slot of a frame's destination, this node's places where it is shown
     * @param board runs its program
     * @param said what it has on the pair, or had last
     */
    public EmulatedNode(
            Pit pit,
            Segment segment,
            Layout layout,
            int index,
            long seed,
            List<Fault> faults,
            int[][] slotsOfPick,
            EventOrder events,
            Shows shows,
            Controls controls,
            Board board,
            Frame said) {
        this.index = index;
        this.board = board;
        this.said = said;
        this.events = events;
        this.shows = shows;
        slots = slotsOfPick;
        Node node = layout.nodes().get(index).node();
        Program program = Objects.requireNonNull(node.program());
        pins = new PinShows(pit, layout, index, program, board, shows);
        ailments = Ailments.of(faults, index, node.name(), node.profile().clock(segment.baud()), seed);
        Hands hands = new Hands(new Contacts(board));
        for (int c = 0; c < layout.controls().size(); c++) {
            Layout.ControlPlace place = layout.controls().get(c);
            Program.Lead lead =
                    program.lead(place.panel().name(), place.control().name());
            if (place.node() == index && lead != null) {
                controls.wire(c, hands.of(place.control(), lead, controls.value(c)));
            }
        }
    }

    /** How many pins an indicator of a kind hangs on, least and most; none where its pins say nothing of it. */
    public static int[] pins(Indicator.Kind kind) {
        return PinShows.pins(kind);
    }

    /** How many pins a control hangs on; 0 where a hand on it is not modelled. */
    public static int pins(Control control) {
        return Hands.pins(control);
    }

    @Override
    public void hear(Frame frame) {
        if (frame.node != index && frame.node != TraceSink.ALL) {
            return;
        }
        for (int i = 0; i < frame.count; i++) {
            for (int slot : slots[frame.picked[i]]) {
                pins.heard(slot, frame.serials[i], frame.values[i], frame.transaction & 0xFF, frame.heardNanos);
            }
        }
    }

    /** Does nothing: the boards of a segment run together. */
    @Override
    public void advanceTo(long nanos) {}

    @Override
    public long quietUntil() {
        return QUIET;
    }

    /** Whether it is off the pair at an instant: unplugged, without supply, or held in reset. */
    public boolean isOff(long atNanos) {
        return atNanos < readyNanos || (ailments != null && ailments.isSilent(atNanos));
    }

    @Override
    public boolean isSilent(long atNanos) {
        return isOff(atNanos) || !board.usart().isReceiving();
    }

    @Override
    public boolean takes(Frame request) {
        return request.node == index;
    }

    @Override
    public boolean misses(Frame frame, boolean afterReply) {
        return false;
    }

    @Override
    public boolean floats(long atNanos) {
        return false;
    }

    /** Its own program counts that. */
    @Override
    public void heardWrong() {}

    @Override
    public void reset(long atNanos, long untilNanos) {
        readyNanos = untilNanos;
        board.restart(untilNanos);
        pins.forget();
        shows.forget(index, atNanos, untilNanos);
        events.post(atNanos, Rank.RESET, index, 0, 0, 0, 0, untilNanos, 0, 0);
    }

    @Override
    public void stall(Indicator.Blocks what, long fromNanos, long untilNanos) {
        throw new UnsupportedOperationException("what blocks an emulated board is its program's: node=" + index);
    }

    @Override
    public double bitNanos(long atNanos) {
        return board.usart().bitCycles() * 1e9 / board.chip().hz();
    }

    @Override
    public NodeStatus status(Frame reply) {
        throw new UnsupportedOperationException("an emulated board says itself how it fares: node=" + index);
    }

    @Override
    public void tellStatus(long atNanos) {
        throw new UnsupportedOperationException("an emulated board says itself how it fares: node=" + index);
    }

    @Override
    public Frame transmission() {
        return said;
    }

    @Override
    public Frame transmit() {
        throw new UnsupportedOperationException("an emulated board begins by itself: node=" + index);
    }
}
