package dropline.bus.run;

import dropline.bus.controller.BoardLoop;
import dropline.bus.controller.UsbPipe;
import dropline.bus.controller.UsbStage;
import dropline.bus.fault.Fault;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Wire;
import dropline.protocol.Bytes;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One segment, running. It shares nothing but what a {@link LaneRun} gives it to share. For each stretch of time:
 * {@link #offer} the block of state that covers it, then {@link #advanceTo} its end; the block may be reused after
 * that.
 *
 * <p>There is no event queue: a segment has one controller that does one thing after another, and what comes next is
 * the earliest of four things known at any time: something from outside, the controller's next act, a reply that
 * begins, a frame that has been heard.
 */
public final class SegmentRun {
    private static final long NEVER = Long.MAX_VALUE;
    private static final long SECOND = 1_000_000_000L;

    /** A pair at 4 Mbaud carries 400,000 characters a second; nothing sensible takes 50 steps for each. */
    private static final long MOST_STEPS = 20_000_000;

    private final Segment segment;
    private final EventOrder events;
    private final HostInput input;
    private final Wire wire;
    private final StateQueues queues;
    private final Stations stations;
    private final FrameBytes bytes;
    private final Troubles troubles;
    private final Polling polling;
    private final @Nullable Boards boards;
    private long reached;
    private long stepsLeft;
    private @Nullable Frame heardNext;
    private int talkerNext;
    private long heardAt;
    private long talkAt;
    private long outsideAt;

    /**
     * One that shares nothing, and decides bit by bit only what has to be.
     *
     * @param pit the description
     * @param segmentIndex index into {@link Pit#segments()}
     * @param seed the run's seed; the same seed gives the same trace
     * @param faults what goes wrong; those of other segments are left out
     * @param sink receives the segment's events in order
     */
    public SegmentRun(Pit pit, int segmentIndex, long seed, List<Fault> faults, TraceSink sink) {
        this(pit, segmentIndex, seed, faults, sink, false);
    }

    /** As above; {@code bitsEverywhere} decides every frame bit by bit, with the same result. */
    SegmentRun(Pit pit, int segmentIndex, long seed, List<Fault> faults, TraceSink sink, boolean bitsEverywhere) {
        this(
                pit,
                segmentIndex,
                seed,
                faults,
                sink,
                new UsbPipe(pit.segments().get(segmentIndex).controller().adapter(), List.of(segmentIndex), faults),
                new BoardLoop(pit.turnNanos(segmentIndex)),
                bitsEverywhere);
    }

    /** One that sends through {@code pipe} and whose frames {@code loop} prepares, as those of others. */
    SegmentRun(
            Pit pit,
            int segmentIndex,
            long seed,
            List<Fault> faults,
            TraceSink sink,
            UsbPipe pipe,
            BoardLoop loop,
            boolean bitsEverywhere) {
        Setting setting = new Setting(pit, segmentIndex, seed, faults, sink, this::bytesOf, bitsEverywhere);
        segment = setting.segment;
        events = setting.events;
        wire = setting.wire;
        UsbStage usb = new UsbStage(segment.controller().adapter(), pipe, seed, segment.name());
        queues = new StateQueues(segment, setting.wiring, pit.signals().size(), events);
        boards = Boards.of(setting);
        stations = setting.stations(n -> queues.own(n).wire(), boards);
        bytes = new FrameBytes(segment, setting.wiring, queues, stations);
        troubles = setting.troubles(stations);
        input = setting.input(queues::arrive);
        polling = new Polling(
                segment,
                seed,
                usb,
                loop,
                events,
                wire,
                setting.reception,
                queues,
                stations,
                boards == null ? stations : boards,
                troubles,
                segment.silenceNanos());
        if (boards != null) {
            boards.controller(polling, stations);
        }
    }

    private Bytes bytesOf(Frame frame) {
        return boards != null && frame.kind == Frame.CHARACTER ? boards.byteOf(frame) : bytes.of(frame);
    }

    /**
     * The bytes of the frame that a talker has on the pair. A sink may ask when it is told that the frame has started;
     * once the talker sends its next one they are gone.
     *
     * @param talker index of a node, or {@link TraceSink#CONTROLLER}
     */
    public Bytes bytes(int talker) {
        if (boards != null && talker != TraceSink.CONTROLLER && boards.has(stations.position(talker))) {
            return boards.told(stations.position(talker));
        }
        return bytes.of(
                talker == TraceSink.CONTROLLER ? polling.request() : stations.frameOf(stations.position(talker)));
    }

    /**
     * Gives the segment the state for the next stretch; everything in it lies at or after the last {@code advanceTo}
     * and before the next.
     */
    public void offer(StateBlock block) {
        input.offer(block);
    }

    /**
     * Runs until {@code toNanos}: every event before it is decided and handed to the sink.
     *
     * @throws RunawayException if that would take more steps than any pair could carry
     */
    public void advanceTo(long toNanos) {
        allow(toNanos);
        long at = lookAhead(toNanos);
        while (at < toNanos) {
            step(at);
            at = lookAhead(toNanos);
        }
        arrive(toNanos);
    }

    /** Grants the steps that a run to {@code toNanos} may take. */
    void allow(long toNanos) {
        stepsLeft = MOST_STEPS * (1 + (toNanos - reached) / SECOND);
    }

    /**
     * Finds what comes next and hands on all events before it and before {@code toNanos}; tells when it is, ns. No
     * other segment's step changes that.
     */
    long lookAhead(long toNanos) {
        long at = next();
        long known = at;
        if (boards != null) {
            while (boards.reachedNanos() < Math.min(at, toNanos)) {
                boards.advanceTo(Math.min(at, toNanos));
                at = next();
            }
            known = Math.min(at, boards.untoldNanos());
        }
        events.release(Math.min(known, toNanos));
        return at;
    }

    private long next() {
        heardNext = wire.nextHeard();
        heardAt = heardNext == null ? NEVER : heardNext.heardNanos;
        talkerNext = stations.nextTalker();
        talkAt = talkerNext < 0 ? NEVER : stations.quietUntil(talkerNext);
        outsideAt = Math.min(Math.min(input.nextNanos(), troubles.nextNanos()), queues.nextRefreshNanos());
        long at = Math.min(Math.min(heardAt, talkAt), Math.min(polling.nextNanos(), outsideAt));
        return boards == null ? at : Math.min(at, boards.nextNanos());
    }

    /** Lets the one thing happen that was found to come next. */
    void step(long at) {
        if (--stepsLeft < 0) {
            throw new RunawayException(segment.name(), reached, MOST_STEPS);
        }
        if (outsideAt == at) {
            outside(at);
        } else if (heardNext != null && heardAt == at) {
            heard(heardNext);
        } else if (talkAt == at) {
            wire.begin(stations.talk(talkerNext));
        } else if (boards != null && boards.nextNanos() <= at) {
            boards.step(at);
        } else {
            polling.act(at, outsideAt);
        }
    }

    /** Everything before {@code toNanos} has happened. */
    void arrive(long toNanos) {
        input.finish();
        reached = toNanos;
    }

    /** Ends the trace at the instant reached; what would have happened later is dropped. */
    public void end() {
        events.end(reached);
    }

    /** The digest of the segment's trace so far: a 64-bit mix over every event's integers. */
    public long digest() {
        return events.digest();
    }

    private void outside(long at) {
        if (troubles.nextNanos() == at) {
            troubles.step();
        } else if (queues.nextRefreshNanos() == at) {
            queues.refresh();
        } else {
            input.step();
        }
    }

    private void heard(Frame frame) {
        frame.heard = true;
        if (boards != null) {
            if (frame.kind == Frame.CHARACTER) {
                boards.heard(frame);
                return;
            }
            boards.overhear(frame, bytesOf(frame));
        }
        switch (frame.kind) {
            case TraceSink.REQUEST -> stations.giveRequest(frame);
            case TraceSink.BROADCAST -> stations.giveAll(frame);
            case TraceSink.REPLY -> polling.reply(frame);
            default -> {}
        }
    }
}
