package dropline.bus.run;

import dropline.bus.chance.Draws;
import dropline.bus.clock.UartClock;
import dropline.bus.control.Controls;
import dropline.bus.controller.PollPlan;
import dropline.bus.controller.StateQueue;
import dropline.bus.controller.UsbStage;
import dropline.bus.fault.Fault;
import dropline.bus.host.StateBlock;
import dropline.bus.indicator.Shows;
import dropline.bus.node.ModelledNode;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Noise;
import dropline.bus.wire.Reception;
import dropline.bus.wire.Uart;
import dropline.bus.wire.Wire;
import dropline.protocol.Bytes;
import java.util.List;

/**
 * One segment, running. Segments share nothing, so each may be stepped on a thread of its own. For each stretch of
 * time: {@link #offer} the block of state that covers it, then {@link #advanceTo} its end; the block may be reused
 * after that.
 *
 * <p>There is no event queue: a segment has one controller that does one thing after another, and what comes next is
 * the earliest of four things known at any time: something from outside, the controller's next act, a reply that
 * begins, a frame that has been heard.
 */
public final class SegmentRun {
    private static final long NEVER = Long.MAX_VALUE;

    /** In place of a burst's size: a poll must come before the next burst of state, so that state starves nobody. */
    private static final int POLL_FIRST = -1;

    private final Segment segment;
    private final Controller controller;
    private final EventOrder events;
    private final HostInput input;
    private final Wire wire;
    private final PollPlan plan;
    private final UsbStage usb;
    private final long silenceNanos;

    private final StateQueues queues;
    private final Stations stations;
    private final SentBroadcasts sent;
    private final FrameBytes bytes;
    private final Reception reception;
    private final Uart ear;
    private final Troubles troubles;
    private final Frame request;
    private long actAt;
    private long startAt;
    private boolean waiting;
    private long deadline;
    private int polled = -1;
    private int transactions;
    private int broadcasts;
    private int attempt;
    private int burst;
    private long reached;

    /**
     * One that decides bit by bit only what has to be.
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
    SegmentRun(
            Pit pit, int segmentIndex, long seed, List<Fault> faults, TraceSink sink, boolean bitsEverywhere) {
        Layout layout = Layout.of(pit);
        Wiring wiring = new Wiring(pit, layout, segmentIndex);
        segment = pit.segments().get(segmentIndex);
        controller = segment.controller();
        Shows shows = new Shows(pit, layout, segmentIndex, seed, faults);
        Revisions revisions = new Revisions(shows);
        events = new EventOrder(sink, revisions);
        shows.postTo(events);
        Controls controls = new Controls(layout, segmentIndex, seed, events, faults);
        revisions.controls(controls);
        wire = new Wire(events, wiring.nodes().length + 1);
        plan = new PollPlan(segment.nodes(), controller);
        usb = new UsbStage(controller.adapter(), seed, segment.name(), segmentIndex, faults);
        silenceNanos = ModelledNode.silence(segment);
        double bitNanos = 1e9 / segment.baud();
        Noise noise =
                new Noise(segment.biased(), Draws.stream(seed, Draws.nameHash(segment.name()), Draws.Purpose.NOISE));
        reception = new Reception(
                segment.format(),
                segment.protocol().framing(),
                silenceNanos,
                bitNanos,
                noise,
                frame -> bytesOf(frame),
                bitsEverywhere);
        ear = new Uart(
                TraceSink.CONTROLLER,
                bitNanos,
                16,
                Transceiver.Receiver.OFF_WHILE_SENDING,
                Draws.stream(seed, Draws.nameHash(segment.name()), Draws.Purpose.CONTENTION));
        queues = new StateQueues(segment, wiring, pit.signals().size(), events);
        stations = new Stations(segment, layout, wiring, queues, seed, faults, events, shows, controls, wire, reception);
        request =
                new Frame(TraceSink.CONTROLLER, queues.mostSlots(), UartClock.exact(segment.baud()), segment.format());
        bytes = new FrameBytes(segment, queues, stations);
        sent = new SentBroadcasts(queues.mostSlots());
        troubles = new Troubles(faults, segment, segmentIndex, layout, seed, stations, wire, noise);
        PartFaults parts = PartFaults.of(shows, controls);
        input = new HostInput(pit, layout, segmentIndex, seed, controls, events, queues::arrive, faults, parts);
        ready(0, 0);
    }

    private Bytes bytesOf(Frame frame) {
        return bytes.of(frame);
    }

    /**
     * The bytes of the frame that a talker has on the pair. A sink may ask when it is told that the frame has started;
     * once the talker sends its next one they are gone.
     *
     * @param talker index of a node, or {@link TraceSink#CONTROLLER}
     */
    public Bytes bytes(int talker) {
        return bytes.of(talker == TraceSink.CONTROLLER ? request : stations.frameOf(stations.position(talker)));
    }

    /**
     * Gives the segment the state for the next stretch; everything in it lies at or after the last {@code advanceTo}
     * and before the next.
     */
    public void offer(StateBlock block) {
        input.offer(block);
    }

    /** Runs until {@code toNanos}: every event before it is decided and handed to the sink. */
    public void advanceTo(long toNanos) {
        while (true) {
            Frame heard = wire.nextHeard();
            long heardAt = heard == null ? NEVER : heard.heardNanos;
            int talker = stations.nextTalker();
            long talkAt = talker < 0 ? NEVER : stations.quietUntil(talker);
            long outside =
                    Math.min(Math.min(input.nextNanos(), troubles.nextNanos()), queues.nextRefreshNanos());
            long at = Math.min(Math.min(heardAt, talkAt), Math.min(actAt, outside));
            events.release(Math.min(at, toNanos));
            if (at >= toNanos) {
                break;
            }
            if (outside == at) {
                outside(at);
            } else if (heard != null && heardAt == at) {
                heard(heard);
            } else if (talkAt == at) {
                wire.begin(stations.talk(talker));
            } else {
                act(at);
            }
        }
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

    // --- the controller

    /** The controller's next frame may begin at {@code from}, or as soon after as the pair allows. */
    private void ready(long nowNanos, long fromNanos) {
        waiting = false;
        long lead = controller.enableLeadNanos();
        long silent = wire.lastEndNanos() + silenceNanos;
        startAt = Math.max(Math.max(fromNanos, silent), Math.max(request.driverOffNanos, nowNanos) + lead);
        actAt = startAt - lead;
    }

    private void act(long at) {
        StateQueue all = queues.all();
        if (waiting) {
            timeOut(at);
        } else if (all != null && all.waiting() > 0 && burst != POLL_FIRST) {
            broadcast(all);
        } else {
            poll(at, all == null);
        }
    }

    private void broadcast(StateQueue queue) {
        if (burst == 0) {
            burst = queue.waiting();
        }
        queue.take(request);
        burst = queue.waiting() == 0 ? 0 : burst - request.count;
        if (burst < 0 || request.count == 0) {
            burst = POLL_FIRST;
        }
        if (request.count == 0) {
            return;
        }
        int chars = queue.wire().requestChars(request.picked, request.count);
        send(TraceSink.BROADCAST, TraceSink.ALL, ++broadcasts, 1, chars);
        sent.remember(request);
        postCarried(TraceSink.ALL, queue);
        long gap = Math.max(controller.gapNanos(), controller.turnaroundNanos());
        ready(request.heardNanos, request.endNanos + gap);
    }

    private void poll(long at, boolean addressed) {
        burst = 0;
        if (attempt == 0) {
            polled = plan.turn(startAt);
            if (polled < 0) {
                long next = Math.min(
                        plan.firstBackNanos(),
                        Math.max(at + 1, Math.min(input.nextNanos(), queues.nextRefreshNanos())));
                actAt = Math.max(next, at + controller.gapNanos());
                startAt = actAt + controller.enableLeadNanos();
                return;
            }
            transactions++;
        }
        attempt++;
        StateQueue queue = queues.own(polled);
        if (addressed) {
            queue.take(request);
        } else {
            request.count = 0;
        }
        int node = stations.node(polled);
        int chars = queue.wire().requestChars(request.picked, request.count);
        send(TraceSink.REQUEST, node, transactions, attempt, chars);
        int cycle = attempt == 1 ? plan.roundBegins() : 0;
        if (cycle > 0) {
            events.post(request.startNanos, Rank.CYCLE_STARTED, TraceSink.CONTROLLER, cycle, 0, 0);
        }
        postCarried(node, queue);
        waiting = true;
        deadline = request.endNanos + controller.timeOutNanos();
        actAt = deadline;
    }

    private void send(int kind, int node, int transaction, int tries, int chars) {
        request.kind = kind;
        request.node = node;
        request.transaction = transaction;
        request.attempt = tries;
        request.lastBroadcast = broadcasts;
        long start = controller.kind() == Controller.Kind.HOST
                ? startAt + usb.outNanos(2L * transaction + (kind == TraceSink.BROADCAST ? 1 : 0))
                : startAt;
        request.time(start, chars, controller.enableLeadNanos(), controller.releaseTailNanos());
        request.damaged = request.count > 0 && troubles.damages(start, ((long) transaction << 8) + tries);
        wire.begin(request);
    }

    private void postCarried(int destination, StateQueue queue) {
        for (int i = 0; i < request.count; i++) {
            events.post(
                    request.startNanos,
                    Rank.CARRIED,
                    destination,
                    queue.signal(request.picked[i]),
                    request.serials[i],
                    request.transaction);
        }
    }

    private void timeOut(long at) {
        int node = stations.node(polled);
        events.post(at, Rank.TIMED_OUT, node, transactions, attempt, 0);
        queues.own(polled).putBack(request);
        if (attempt > controller.retries()) {
            events.post(at, Rank.GAVE_UP, node, transactions, 0, 0);
            long until = plan.gaveUp(polled, at);
            if (until > 0) {
                events.post(at, Rank.BACKED_OFF, node, 0, 0, 0, 0, until, 0, 0);
            }
            nextTurn();
        }
        ready(at, at + controller.gapNanos());
    }

    private void nextTurn() {
        plan.pass();
        attempt = 0;
    }

    // --- the wire

    private void heard(Frame frame) {
        frame.heard = true;
        switch (frame.kind) {
            case TraceSink.REQUEST -> stations.giveRequest(frame);
            case TraceSink.BROADCAST -> stations.giveAll(frame);
            case TraceSink.REPLY -> reply(frame);
            default -> {}
        }
    }

    private void reply(Frame frame) {
        boolean awaited = waiting && stations.position(frame.node) == polled && frame.transaction == transactions;
        if (!awaited) {
            return;
        }
        boolean echoed = !segment.protocol().marksReplies() && troubles.echoes(request.startNanos);
        boolean received = !echoed && reception.received(frame, wire, ear);
        if (!echoed && reception.phantoms() > 0) {
            events.post(frame.heardNanos, Rank.PHANTOM, TraceSink.CONTROLLER, reception.phantoms(), 0, 0);
        }
        if (received) {
            answer(frame);
        } else {
            events.post(
                    frame.heardNanos,
                    Rank.RECEIVED_WRONG,
                    TraceSink.CONTROLLER,
                    frame.talker,
                    frame.transaction,
                    0);
        }
    }

    private void answer(Frame reply) {
        boolean hub = controller.kind() == Controller.Kind.HUB;
        long has = hub ? reply.endNanos : usb.inNanos(reply.endNanos, reply.chars, transactions);
        if (has > deadline) {
            return;
        }
        int node = reply.node;
        long gap = reply.startNanos - request.endNanos;
        events.post(hub ? reply.heardNanos : has, Rank.ANSWERED, node, transactions, attempt, 0, 0, gap, 0, 0);
        long told = hub ? usb.inNanos(reply.endNanos, reply.chars, transactions) : has;
        if (reply.talker == node) {
            stations.tell(told, polled);
            if (segment.protocol().acknowledgesState()) {
                stations.tellStatus(polled, hub ? reply.heardNanos : has);
            }
        }
        StateQueue all = queues.all();
        if (all != null && segment.protocol().acknowledgesState() && reply.lastBroadcast < request.lastBroadcast) {
            sent.markMissed(reply.lastBroadcast, stations.shows(polled), all);
        }
        plan.answered(polled);
        nextTurn();
        ready(has, has + controller.gapNanos());
    }
}
