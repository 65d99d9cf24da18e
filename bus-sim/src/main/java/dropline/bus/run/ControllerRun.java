package dropline.bus.run;

import dropline.bus.clock.UartClock;
import dropline.bus.controller.BoardLoop;
import dropline.bus.controller.UsbPipe;
import dropline.bus.controller.UsbStage;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Wire;
import dropline.protocol.Bytes;
import dropline.protocol.Heard;
import java.util.List;

/**
 * A segment's controller with nodes outside: it polls, sends state and waits as in a {@link SegmentRun}, but whoever
 * runs it carries its frames to real nodes and brings back what they answer. What those show is inferred: each node's
 * profile runs along in its shadow, hears every frame, and never talks.
 *
 * <p>What comes of it follows from what it is given and when: the same blocks, instants and answers give the same
 * trace.
 */
public final class ControllerRun {
    private static final long NEVER = Long.MAX_VALUE;

    /** Carries a frame of the controller's to the nodes. */
    @FunctionalInterface
    public interface Mouth {
        /** The frame begins at {@code frame.startNanos}. */
        void says(Frame frame, Bytes bytes);
    }

    private final Segment segment;
    private final EventOrder events;
    private final Wire wire;
    private final StateQueues queues;
    private final Stations stations;
    private final FrameBytes bytes;
    private final HostInput input;
    private final Polling polling;
    private final Answered answered;
    private final Mouth mouth;
    private final Frame[] replies;
    private final long lagNanos;
    private long reached;

    /**
     * @param described the pit; its adapter and driver are left out, since the real ones take their own time
     * @param sink receives the segment's events in order, a frame's length late
     */
    public ControllerRun(Pit described, int segmentIndex, long seed, TraceSink sink, Mouth mouth) {
        this.mouth = mouth;
        Pit pit = bare(described, segmentIndex);
        Setting setting = new Setting(pit, segmentIndex, seed, List.of(), sink, this::bytesOf, false);
        segment = setting.segment;
        events = setting.events;
        wire = setting.wire;
        queues = new StateQueues(segment, setting.wiring, pit.signals().size(), events);
        stations = setting.stations(n -> queues.own(n).wire());
        bytes = new FrameBytes(segment, setting.wiring, queues, stations);
        input = setting.input(queues::arrive);
        answered = new Answered(setting.layout, setting.wiring, setting.controls, events);
        UsbPipe pipe = new UsbPipe(Adapter.NONE, List.of(segmentIndex), List.of());
        polling = new Polling(
                segment,
                seed,
                new UsbStage(Adapter.NONE, pipe, seed, segment.name()),
                new BoardLoop(0),
                events,
                wire,
                setting.reception,
                queues,
                stations,
                answered,
                setting.troubles(stations),
                segment.silenceNanos());
        replies = new Frame[setting.wiring.nodes().length];
        int longest = 1;
        for (int n = 0; n < replies.length; n++) {
            replies[n] = new Frame(setting.wiring.nodes()[n], 0, UartClock.exact(segment.baud()), segment.format());
            longest = Math.max(longest, queues.own(n).wire().longestReplyChars());
        }
        lagNanos = 2 * UartClock.exact(segment.baud()).charsNanos(segment.format(), longest) + segment.silenceNanos();
    }

    private static Pit bare(Pit pit, int segmentIndex) {
        Segment segment = pit.segments().get(segmentIndex);
        return pit.with(segmentIndex, segment.with(segment.controller().bare()));
    }

    /** How far it has come, ns. */
    public long reachedNanos() {
        return reached;
    }

    /** When it does something next of its own accord, ns. */
    public long nextNanos() {
        Frame heard = wire.nextHeard();
        long next = Math.min(polling.nextNanos(), heard == null ? NEVER : heard.heardNanos);
        return Math.min(next, Math.min(input.nextNanos(), queues.nextRefreshNanos()));
    }

    /** Gives it the state between the last {@code advanceTo} and the next. */
    public void offer(StateBlock block) {
        input.offer(block);
    }

    /**
     * Runs until an instant, which is now: what should have gone out before goes out at once, late.
     *
     * @return by how much the latest of it was late, ns; 0 if nothing was
     */
    public long advanceTo(long toNanos) {
        long late = 0;
        long at = nextNanos();
        while (at < toNanos) {
            if (polling.nextNanos() == at && polling.awaited() < 0) {
                late = Math.max(late, toNanos - 1 - at);
                polling.delay(toNanos - 1);
            }
            step(nextNanos());
            at = nextNanos();
        }
        events.release(toNanos - lagNanos);
        input.finish();
        reached = toNanos;
        return late;
    }

    private void step(long at) {
        Frame heard = wire.nextHeard();
        if (input.nextNanos() == at) {
            input.step();
        } else if (queues.nextRefreshNanos() == at) {
            queues.refresh();
        } else if (heard != null && heard.heardNanos == at) {
            heard(heard);
        } else {
            long before = polling.request().number;
            polling.act(at, Math.min(input.nextNanos(), queues.nextRefreshNanos()));
            if (polling.request().number != before) {
                mouth.says(polling.request(), bytesOf(polling.request()));
            }
        }
    }

    private void heard(Frame frame) {
        frame.heard = true;
        switch (frame.kind) {
            case TraceSink.REQUEST -> stations.giveRequest(frame);
            case TraceSink.BROADCAST -> stations.giveAll(frame);
            default -> polling.reply(frame);
        }
    }

    /** The node whose answer is awaited, as the trace numbers it, or -1. */
    public int awaited() {
        return polling.awaited() < 0 ? -1 : stations.node(polling.awaited());
    }

    /**
     * The node that was asked has answered.
     *
     * @param heardNanos when its last character was there, at or after the instant reached
     * @param chars how long the reply was
     */
    public void answered(long heardNanos, Heard reply, int chars) {
        int position = polling.awaited();
        if (position < 0) {
            return;
        }
        Frame request = polling.request();
        Frame frame = replies[position];
        frame.kind = TraceSink.REPLY;
        frame.node = stations.node(position);
        frame.transaction = request.transaction;
        frame.attempt = request.attempt;
        frame.count = 0;
        frame.lastBroadcast = reply.status() == null
                ? request.lastBroadcast
                : request.lastBroadcast
                        - (request.lastBroadcast - reply.status().lastSequence() & 0xFF);
        UartClock clock = UartClock.exact(segment.baud());
        frame.time(heardNanos - clock.heardNanos(segment.format(), chars), chars, 0, 0);
        answered.take(reply, frame.startNanos);
        wire.begin(frame);
    }

    /** Ends the trace at the instant reached. */
    public void end() {
        events.end(reached);
    }

    /** The digest of the trace so far. */
    public long digest() {
        return events.digest();
    }

    private Bytes bytesOf(Frame frame) {
        return bytes.of(frame);
    }
}
