package dropline.bus.run;

import dropline.bus.avr.board.Board;
import dropline.bus.avr.core.StoppedException;
import dropline.bus.chance.Draws;
import dropline.bus.clock.UartClock;
import dropline.bus.node.EmulatedNode;
import dropline.bus.pit.Node;
import dropline.bus.pit.Program;
import dropline.bus.pit.Transceiver;
import dropline.bus.wire.Edges;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Uart;
import dropline.protocol.Bytes;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The emulated boards of a segment, in step with its pair. They run in windows: each hears what stands on the pair as
 * far as that is known, and what another begins in a window it hears when that is over. While one of them drives the
 * pair at most, that one runs first and a window has eight bits, which no receiver notices: it has a character after
 * nine and a half. Half a bit it has while several drive, or while a receiver is so full that the next start bit costs
 * it a character. Only where somebody begins while another talks may what a third makes of it hang on the window.
 *
 * <p>What they send goes over the pair character by character. The controller's end of the protocol makes frames of the
 * characters that it hears.
 */
final class Boards implements Polling.Answers {
    private static final long NEVER = Long.MAX_VALUE;

    /** Power came so long before the run where a profile does not say how long a start takes. */
    private static final long USUAL_START_NANOS = 100_000_000;

    private static final double LONG_BITS = 8;
    private static final double SHORT_BITS = 0.5;

    private final Setting setting;
    private final @Nullable EmulatedStation[] stations;
    private final List<EmulatedStation> all = new ArrayList<>();
    private final Edges edges;
    private final Replies replies;
    private final double bitNanos;
    private final long silenceNanos;
    private Polling.@Nullable Answers others;
    private long reached;

    /** Those of a segment, or null if it has none. */
    static @Nullable Boards of(Setting setting) {
        for (Node node : setting.segment.nodes()) {
            if (node.program() != null) {
                return new Boards(setting);
            }
        }
        return null;
    }

    private Boards(Setting setting) {
        this.setting = setting;
        bitNanos = 1e9 / setting.segment.baud();
        silenceNanos = setting.segment.silenceNanos();
        int[] nodes = setting.wiring.nodes();
        stations = new EmulatedStation[nodes.length];
        for (int n = 0; n < nodes.length; n++) {
            Node node = setting.layout.nodes().get(nodes[n]).node();
            if (node.program() != null) {
                EmulatedStation made = station(n, node, node.program());
                stations[n] = made;
                all.add(made);
            }
        }
        edges = new Edges(setting.wire, setting.content, setting.noise, bitNanos);
        replies = new Replies(setting);
    }

    private EmulatedStation station(int position, Node node, Program program) {
        int index = setting.wiring.nodes()[position];
        Transceiver transceiver = node.profile().transceiver();
        long boot = node.profile().bootNanos();
        Voice voice = new Voice(
                index,
                program.driverEnable() == null,
                transceiver,
                UartClock.exact(setting.segment.baud()),
                setting.segment.format(),
                setting.wire);
        Board board = new Board(
                program.powered(),
                program.usart(),
                program.driverEnable(),
                -(boot > 0 ? boot : USUAL_START_NANOS),
                voice);
        voice.of(board);
        return new EmulatedStation(
                position,
                board,
                voice,
                new Uart(
                        index,
                        bitNanos,
                        transceiver.samplesPerBit(),
                        transceiver.receiver(),
                        Draws.stream(setting.seed, Draws.nameHash(node.name()), Draws.Purpose.CONTENTION)));
    }

    /** Whether the node in a position is one of them. */
    boolean has(int position) {
        return stations[position] != null;
    }

    /**
     * That node, which now has run until the begin of the run.
     *
     * @param slots for each slot of a frame's destination, its places where it is shown
     */
    EmulatedNode node(int position, int[][] slots) {
        EmulatedStation station = Objects.requireNonNull(stations[position]);
        EmulatedNode made = new EmulatedNode(
                setting.pit,
                setting.segment,
                setting.layout,
                setting.wiring.nodes()[position],
                setting.seed,
                setting.faults,
                slots,
                setting.events,
                setting.shows,
                setting.controls,
                station.board,
                station.voice.whole());
        station.stands(made);
        run(station, 0);
        return made;
    }

    /** Ties them to the controller that polls them, and to what takes the answers of nodes that are modelled. */
    void controller(Polling controller, Polling.Answers modelled) {
        replies.controller(controller);
        others = modelled;
    }

    /** Up to when they have run, ns. */
    long reachedNanos() {
        return reached;
    }

    /**
     * Lets them run up to an instant, but for one window at most.
     *
     * @throws StoppedProgramException if one of them does what is not modelled
     */
    void advanceTo(long nanos) {
        EmulatedStation talker = null;
        boolean isLong = true;
        for (int i = 0; i < all.size(); i++) {
            EmulatedStation station = all.get(i);
            station.voice.connect(!station.isOff(reached), reached);
            boolean drives = station.voice.drives(reached);
            isLong &= !(drives && talker != null) && !station.board.usart().isFull();
            talker = drives ? station : talker;
        }
        long to = Math.min(nanos, reached + (long) ((isLong ? LONG_BITS : SHORT_BITS) * bitNanos));
        edges.lookAt(reached, to);
        boolean isNews = false;
        if (talker != null) {
            talker.hear(edges, reached, to);
            run(talker, to);
            isNews = talker.voice.hasJoined();
            if (isNews) {
                edges.lookAt(reached, to);
            }
        }
        for (int i = 0; i < all.size(); i++) {
            EmulatedStation station = all.get(i);
            if (station != talker) {
                station.hear(edges, reached, to);
                run(station, to);
                isNews |= station.voice.hasJoined();
            }
        }
        if (isNews) {
            edges.lookAt(reached, to);
        }
        for (int i = 0; i < all.size(); i++) {
            all.get(i).reach(edges, reached, to, isNews);
        }
        reached = to;
    }

    private void run(EmulatedStation station, long toNanos) {
        station.board.advanceTo(toNanos);
        StoppedException stop = station.board.stop();
        if (stop != null) {
            throw new StoppedProgramException(setting.segment.nodes().get(station.position), station.board, stop);
        }
    }

    /** When what one of them has sent is over and can be told, or a silence has grown long enough, ns. */
    long nextNanos() {
        long next = NEVER;
        for (int i = 0; i < all.size(); i++) {
            next = Math.min(next, all.get(i).voice.overNanos(silenceNanos));
        }
        return next;
    }

    /** That happens. */
    void step(long atNanos) {
        for (int i = 0; i < all.size(); i++) {
            EmulatedStation station = all.get(i);
            if (station.voice.overNanos(silenceNanos) <= atNanos) {
                replies.silence(station, atNanos);
            }
        }
    }

    /** Since when something is on the pair of which it is not known what it is, ns. */
    long untoldNanos() {
        long first = NEVER;
        for (int i = 0; i < all.size(); i++) {
            first = Math.min(first, all.get(i).voice.untoldNanos());
        }
        return first;
    }

    /** The byte of a character that one of them sent. */
    Bytes byteOf(Frame character) {
        return Objects.requireNonNull(stations[setting.position(character.talker)])
                .voice
                .byteOf(character);
    }

    /** The bytes of the frame that one of them was last told to have sent. */
    Bytes told(int position) {
        return Objects.requireNonNull(stations[position]).voice.told();
    }

    /** The sample of a character's stop bit: whether the controller has it. */
    void heard(Frame character) {
        replies.heard(Objects.requireNonNull(stations[setting.position(character.talker)]), character);
    }

    /** A frame of somebody else's has been heard. */
    void overhear(Frame frame, Bytes bytes) {
        replies.overhear(frame, bytes);
    }

    @Override
    public void tell(long atNanos, int position) {
        if (has(position)) {
            replies.tell(atNanos, position);
        } else {
            Objects.requireNonNull(others).tell(atNanos, position);
        }
    }

    @Override
    public void tellStatus(int position, long atNanos) {
        if (has(position)) {
            replies.tellStatus(position, atNanos);
        } else {
            Objects.requireNonNull(others).tellStatus(position, atNanos);
        }
    }
}
