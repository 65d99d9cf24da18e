package dropline.bus.run;

import dropline.bus.avr.board.Board;
import dropline.bus.avr.core.StoppedException;
import dropline.bus.chance.Draws;
import dropline.bus.clock.UartClock;
import dropline.bus.node.EmulatedNode;
import dropline.bus.pit.Node;
import dropline.bus.pit.Program;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Edges;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Uart;
import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.Heard;
import dropline.protocol.Listener;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The emulated boards of a segment, in step with its pair. They run in windows: each hears what stands on the pair as
 * far as that is known, and what one of them begins in a window the others hear when it is over. A board alone runs
 * eight bits at a time, several half a bit, which no receiver notices: a start bit is believed after more than half of
 * it. Only where two talk at once may what a third makes of it hang on that half bit.
 *
 * <p>What they send goes over the pair character by character. The controller's end of the protocol makes frames of the
 * characters that it hears.
 */
final class Boards implements Polling.Answers {
    private static final long NEVER = Long.MAX_VALUE;

    /** Power came so long before the run where a profile does not say how long a start takes. */
    private static final long USUAL_START_NANOS = 100_000_000;

    private static final double BITS_ALONE = 8;
    private static final double BITS_TOGETHER = 0.5;

    /** An emulated board, and how it is tied to the pair. */
    private static final class Station {
        final int position;
        final Board board;
        final Voice voice;
        final Uart ear;
        private int level = 1;
        private int levelAfter = 1;
        private @Nullable EmulatedNode node;

        Station(int position, Board board, Voice voice, Uart ear) {
            this.position = position;
            this.board = board;
            this.voice = voice;
            this.ear = ear;
        }

        boolean isOff(long atNanos) {
            return node == null || node.isOff(atNanos);
        }

        /** It hears what is known to stand on the pair in a window. */
        void hear(Edges edges, long from, long to, int before) {
            if (!isOff(from)) {
                levelAfter = edges.tell(from, to, ear, before, board::edge);
                board.heard();
            }
        }

        /** The window is over; if there was news in it, it hears again from where it can still be told otherwise. */
        void reach(Edges edges, long windowFrom, long to, boolean isNews) {
            if (isNews) {
                long from = Math.max(windowFrom, board.openNanos());
                if (from < to) {
                    hear(edges, from, to, board.takeBack(from));
                }
            }
            level = levelAfter;
        }
    }

    private final Setting setting;
    private final @Nullable Station[] stations;
    private final List<Station> all = new ArrayList<>();
    private final Edges edges;
    private final Listener listener;
    private final Answered answered;
    private final double bitNanos;
    private final long windowNanos;
    private final long silenceNanos;
    private @Nullable Polling polling;
    private Polling.@Nullable Answers others;
    private @Nullable Station speaker;
    private long reached;
    private long lastEndNanos;

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
        stations = new Station[nodes.length];
        boolean hearThemselves = false;
        for (int n = 0; n < nodes.length; n++) {
            Node node = setting.layout.nodes().get(nodes[n]).node();
            if (node.program() != null) {
                Station made = station(n, node, node.program());
                stations[n] = made;
                all.add(made);
                hearThemselves |= node.profile().transceiver().receiver() != Transceiver.Receiver.OFF_WHILE_SENDING;
            }
        }
        windowNanos = (long) ((all.size() > 1 || hearThemselves ? BITS_TOGETHER : BITS_ALONE) * bitNanos);
        edges = new Edges(setting.wire, setting.content, setting.noise, bitNanos);
        listener = setting.segment
                .protocol()
                .listener(
                        setting.segment.nodes().stream()
                                .map(node -> setting.wiring.wireOf(
                                        nodes[setting.segment.nodes().indexOf(node)]))
                                .toList(),
                        setting.segment.baud(),
                        setting.segment.format());
        listener.onSilence(Integer.MAX_VALUE);
        answered = new Answered(setting.layout, setting.wiring, setting.controls, setting.events);
    }

    private Station station(int position, Node node, Program program) {
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
        return new Station(
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
        Station station = Objects.requireNonNull(stations[position]);
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
        station.node = made;
        run(station, 0);
        return made;
    }

    /** Ties them to the controller that polls them, and to what takes the answers of nodes that are modelled. */
    void controller(Polling controller, Polling.Answers modelled) {
        polling = controller;
        others = modelled;
    }

    private Polling polling() {
        return Objects.requireNonNull(polling);
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
        long to = Math.min(nanos, reached + windowNanos);
        edges.lookAt(reached, to);
        boolean isNews = false;
        for (int i = 0; i < all.size(); i++) {
            Station station = all.get(i);
            station.voice.connect(!station.isOff(reached), reached);
            station.hear(edges, reached, to, station.level);
            run(station, to);
            isNews |= station.voice.hasJoined();
        }
        if (isNews) {
            edges.lookAt(reached, to);
        }
        for (int i = 0; i < all.size(); i++) {
            all.get(i).reach(edges, reached, to, isNews);
        }
        reached = to;
    }

    private void run(Station station, long toNanos) {
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
            Station station = all.get(i);
            if (station.voice.overNanos(silenceNanos) <= atNanos) {
                speaker = station;
                understand(listener.onSilence(tenths(atNanos - lastEndNanos)), atNanos);
                if (station.voice.untoldNanos() != NEVER) {
                    tellUnknown(station);
                }
            }
        }
    }

    /** Something was sent that nobody understood. */
    private void tellUnknown(Station station) {
        Frame request = polling().request();
        boolean isAsked = polling().awaited() == station.position;
        int node = setting.wiring.nodes()[station.position];
        Frame told = isAsked
                ? station.voice.tell(TraceSink.REPLY, node, request.transaction, request.attempt)
                : station.voice.tell(Frame.BABBLE, node, 0, 0);
        if (isAsked) {
            polling().replyWrong(told);
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
        Station station = Objects.requireNonNull(stations[setting.position(character.talker)]);
        boolean isHeard = polling().hears(character);
        silence(character);
        if (isHeard) {
            speaker = station;
            understand(listener.onByte(station.voice.byteOf(character).at(0)), character.heardNanos);
        }
    }

    /** A frame of somebody else's has been heard. */
    void overhear(Frame frame, Bytes bytes) {
        silence(frame);
        speaker = null;
        for (int i = 0; i < bytes.length(); i++) {
            understand(listener.onByte(bytes.at(i)), frame.heardNanos);
        }
    }

    private void silence(Frame next) {
        if (next.startNanos > lastEndNanos) {
            understand(listener.onSilence(tenths(next.startNanos - lastEndNanos)), next.startNanos);
        }
        lastEndNanos = Math.max(lastEndNanos, next.endNanos);
    }

    private int tenths(long nanos) {
        return (int) Math.max(0, Math.min(Integer.MAX_VALUE, Math.round(nanos * 10 / bitNanos)));
    }

    private void understand(Decoded<Heard> first, long nowNanos) {
        Decoded<Heard> decoded = first;
        while (!(decoded instanceof Decoded.NeedMore<Heard>)) {
            if (decoded instanceof Decoded.Complete<Heard> complete
                    && complete.frame().kind() == Heard.Kind.REPLY
                    && speaker != null) {
                replied(speaker, complete.frame(), complete.bytesUsed(), nowNanos);
            }
            decoded = listener.more();
        }
    }

    private void replied(Station station, Heard said, int chars, long nowNanos) {
        int asked = polling().awaited();
        int address = asked < 0 ? 0 : setting.segment.nodes().get(asked).address();
        if (asked < 0 || station.voice.untoldNanos() == NEVER || (said.address() != 0 && said.address() != address)) {
            return;
        }
        Frame request = polling().request();
        long start = station.voice.startNanos(chars);
        Frame reply = station.voice.tell(
                TraceSink.REPLY, setting.wiring.nodes()[asked], request.transaction, request.attempt);
        reply.startNanos = start;
        reply.lastBroadcast = said.status() == null
                ? request.lastBroadcast
                : request.lastBroadcast - (request.lastBroadcast - said.status().lastSequence() & 0xFF);
        answered.take(said, start);
        polling().understood(reply, nowNanos);
    }

    @Override
    public void tell(long atNanos, int position) {
        if (has(position)) {
            answered.tell(atNanos, position);
        } else {
            Objects.requireNonNull(others).tell(atNanos, position);
        }
    }

    @Override
    public void tellStatus(int position, long atNanos) {
        if (has(position)) {
            answered.tellStatus(position, atNanos);
        } else {
            Objects.requireNonNull(others).tellStatus(position, atNanos);
        }
    }
}
