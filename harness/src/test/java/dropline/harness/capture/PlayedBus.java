package dropline.harness.capture;

import dropline.bus.chance.Distribution;
import dropline.bus.clock.UartClock;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.TraceSink;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.sized.Sized;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/** A segment whose events are played by hand, in order of time, into a capture. */
public final class PlayedBus {
    public static final int CONTROLLER = TraceSink.CONTROLLER;
    public static final long US = 1_000L;
    public static final long BIT = 100 * US;

    private final Pit pit;
    private final Map<Integer, Bytes> bytes = new TreeMap<>();
    private final List<Played> events = new ArrayList<>();

    /** Something that happens at an instant. */
    private record Played(long atNanos, int order, Event event) {}

    /** Tells a sink. */
    @FunctionalInterface
    public interface Event {
        void to(TraceSink sink);
    }

    /** A bus of 10 kbaud, 8N1, so that a bit lasts 100 us. */
    public PlayedBus(int nodes) {
        this(nodes, 10_000, CharacterFormat.EIGHT_N_ONE);
    }

    public PlayedBus(int nodes, int baud, CharacterFormat format) {
        List<Node> made = IntStream.rangeClosed(1, nodes)
                .mapToObj(address -> new Node("node " + address, address, 1, profile(), List.of(), List.of()))
                .toList();
        Controller controller = new Controller(
                Controller.Kind.HUB,
                Adapter.NONE,
                Controller.StateDelivery.ADDRESSED,
                2_000_000,
                1,
                0,
                0,
                0,
                0,
                0,
                0,
                0);
        Sized sized = new Sized(8, List.of(new Sized.ReplyChoice(8, 1)), 6, 4, 10, 0);
        pit = new Pit(
                "played", 0, null, List.of(), List.of(new Segment("bus", baud, format, sized, controller, made, true)));
    }

    public Pit pit() {
        return pit;
    }

    public PlayedBus at(long nanos, Event event) {
        events.add(new Played(nanos, events.size(), event));
        return this;
    }

    /** What a talker sends from now on, unless a frame says otherwise. */
    public PlayedBus bytesOf(int talker, Bytes content) {
        bytes.put(talker, content);
        return this;
    }

    /** A whole frame. */
    public PlayedBus frame(
            int talker, int kind, int node, int transaction, long on, long start, long off, Bytes content) {
        Segment segment = pit.segments().get(0);
        long end = start + UartClock.exact(segment.baud()).charsNanos(segment.format(), content.length());
        at(on, sink -> sink.driverOn(on, talker));
        at(start, sink -> {
            bytes.put(talker, content);
            sink.frameStarted(start, talker, kind, node, transaction, content.length());
        });
        at(end, sink -> sink.frameEnded(end, talker, kind, node, transaction));
        return at(off, sink -> sink.driverOff(off, talker));
    }

    /** Plays it all, and ends the run. */
    public void play(Stretch stretch, long endNanos, CaptureSink... sinks) throws IOException {
        Captures captures = new Captures(pit, stretch, List.of(sinks));
        SegmentCapture capture = captures.watchers().get(0);
        capture.follow(talker -> bytes.getOrDefault(talker, Bytes.of()));
        events.sort((a, b) -> a.atNanos() != b.atNanos()
                ? Long.compare(a.atNanos(), b.atNanos())
                : Integer.compare(a.order(), b.order()));
        for (Played played : events) {
            played.event().to(capture);
            captures.stretchEnded(played.atNanos());
        }
        capture.ended(endNanos);
        captures.stretchEnded(endNanos);
        for (CaptureSink sink : sinks) {
            sink.close();
        }
    }

    private static Profile profile() {
        return new Profile(
                Profile.ReplyFrom.INTERRUPT,
                Distribution.constant(100_000),
                0,
                0,
                0,
                2,
                63,
                List.of(),
                0,
                0,
                0,
                Transceiver.USUAL);
    }
}
