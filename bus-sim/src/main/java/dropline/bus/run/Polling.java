package dropline.bus.run;

import dropline.bus.chance.Draws;
import dropline.bus.clock.UartClock;
import dropline.bus.controller.BoardLoop;
import dropline.bus.controller.PollPlan;
import dropline.bus.controller.StateQueue;
import dropline.bus.controller.UsbStage;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Reception;
import dropline.bus.wire.Uart;
import dropline.bus.wire.Wire;

/**
 * The controller at work: whose turn it is, what goes out, what came back, what was waited for in vain. It does one
 * thing after another and always knows when the next is due.
 */
final class Polling {
    /** In place of a burst's size: a poll must come before the next burst of state, so that state starves nobody. */
    private static final int POLL_FIRST = -1;

    private final Segment segment;
    private final Controller controller;
    private final EventOrder events;
    private final Wire wire;
    private final Reception reception;
    private final StateQueues queues;
    private final Stations stations;
    private final Answers answers;
    private final Troubles troubles;
    private final PollPlan plan;
    private final UsbStage usb;
    private final BoardLoop loop;
    private final SentBroadcasts sent;
    private final Frame request;
    private final Uart ear;
    private final long silenceNanos;
    private long actAt;
    private long startAt;
    private boolean isBooked;
    private boolean waiting;
    private long deadline;
    private int polled = -1;
    private int transactions;
    private int broadcasts;
    private int attempt;
    private int burst;
    private int valuesSincePoll;

    Polling(
            Segment segment,
            long seed,
            UsbStage usb,
            BoardLoop loop,
            EventOrder events,
            Wire wire,
            Reception reception,
            StateQueues queues,
            Stations stations,
            Answers answers,
            Troubles troubles,
            long silenceNanos) {
        this.segment = segment;
        this.usb = usb;
        this.loop = loop;
        this.events = events;
        this.wire = wire;
        this.reception = reception;
        this.queues = queues;
        this.stations = stations;
        this.answers = answers;
        this.troubles = troubles;
        this.silenceNanos = silenceNanos;
        controller = segment.controller();
        plan = new PollPlan(segment.nodes(), controller);
        sent = new SentBroadcasts(queues.mostSlots());
        UartClock clock = UartClock.exact(segment.baud());
        request = new Frame(TraceSink.CONTROLLER, queues.mostSlots(), clock, segment.format());
        ear = new Uart(
                TraceSink.CONTROLLER,
                clock.bitNanos(),
                Transceiver.USUAL.samplesPerBit(),
                Transceiver.USUAL.receiver(),
                Draws.stream(seed, Draws.nameHash(segment.name()), Draws.Purpose.CONTENTION));
        ready(0, 0);
    }

    /** Takes what a reply tells. */
    interface Answers {
        /** The host is told of the controls that the last reply from this position reported. */
        void tell(long atNanos, int position);

        /** What that reply said of its node is known. */
        void tellStatus(int position, long atNanos);
    }

    /** When the controller acts next, ns. */
    long nextNanos() {
        return actAt;
    }

    /** What it sends next goes out no earlier than this: whoever runs it has come round to it only now. */
    void delay(long nowNanos) {
        if (!waiting && actAt < nowNanos) {
            startAt = Math.max(startAt, nowNanos + controller.enableLeadNanos());
            actAt = nowNanos;
        }
    }

    /** The position whose answer is awaited, or -1. */
    int awaited() {
        return waiting ? polled : -1;
    }

    /** The frame it has on the pair, or had last. */
    Frame request() {
        return request;
    }

    /**
     * Lets it act.
     *
     * @param outsideNanos when something from outside comes next, for which it waits if nobody is to be polled
     */
    void act(long at, long outsideNanos) {
        StateQueue all = queues.all();
        if (waiting) {
            timeOut(at);
            return;
        }
        boolean state = all != null && all.waiting() > 0 && burst != POLL_FIRST;
        if (!state && attempt == 0 && !choose(at, outsideNanos)) {
            return;
        }
        if (!isPrepared(at)) {
            return;
        }
        if (all != null && state) {
            broadcast(all);
        } else {
            poll(all == null);
        }
    }

    /** Whom to poll; if nobody, it waits for the first that is no longer left alone, or for something from outside. */
    private boolean choose(long at, long outsideNanos) {
        polled = plan.turn(startAt);
        if (polled < 0) {
            burst = 0;
            valuesSincePoll = 0;
            long next = Math.min(plan.firstBackNanos(), Math.max(at + 1, outsideNanos));
            actAt = Math.max(next, at + controller.gapNanos());
            startAt = actAt + controller.enableLeadNanos();
            return false;
        }
        return true;
    }

    /**
     * Whether the program has come round to this frame, which then begins a turn later. If not, the controller acts
     * again when its turn begins: what the frame carries is decided then.
     */
    private boolean isPrepared(long at) {
        if (!isBooked) {
            long begins = loop.book(at);
            if (begins > at) {
                isBooked = true;
                actAt = begins;
                startAt = begins + controller.enableLeadNanos();
                return false;
            }
        }
        isBooked = false;
        startAt += loop.turnNanos();
        return true;
    }

    /** A reply is over: whether the controller has it, and waited for it. */
    void reply(Frame frame) {
        if (isAwaited(frame) && !isEchoed() && hears(frame)) {
            answer(frame, frame.heardNanos);
        } else if (isAwaited(frame)) {
            replyWrong(frame);
        }
    }

    private boolean isAwaited(Frame frame) {
        return waiting && stations.position(frame.node) == polled && frame.transaction == transactions;
    }

    /** Whether it takes its own request for the reply. */
    private boolean isEchoed() {
        return !segment.protocol().marksReplies() && troubles.echoes(request.startNanos);
    }

    /** Whether it hears a frame as it was sent. */
    boolean hears(Frame frame) {
        boolean received = reception.received(frame, wire, ear);
        if (reception.phantoms() > 0) {
            events.post(frame.heardNanos, Rank.PHANTOM, TraceSink.CONTROLLER, reception.phantoms(), 0, 0);
        }
        return received;
    }

    /** A reply was understood by what was heard of it, character by character, at an instant. */
    void understood(Frame frame, long nowNanos) {
        if (isAwaited(frame) && !isEchoed()) {
            answer(frame, nowNanos);
        }
    }

    /** What was heard in place of a reply was not understood. */
    void replyWrong(Frame frame) {
        events.post(frame.heardNanos, Rank.RECEIVED_WRONG, TraceSink.CONTROLLER, frame.talker, frame.transaction, 0);
    }

    private void answer(Frame reply, long nowNanos) {
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
            answers.tell(told, polled);
            if (segment.protocol().reportsStatus()) {
                answers.tellStatus(polled, hub ? reply.heardNanos : has);
            }
        }
        StateQueue all = queues.all();
        if (all != null && segment.protocol().acknowledgesState() && reply.lastBroadcast < request.lastBroadcast) {
            sent.markMissed(reply.lastBroadcast, stations.shows(polled), all);
        }
        plan.answered(polled);
        nextTurn();
        ready(Math.max(nowNanos, has), has + controller.gapNanos());
    }

    /** The controller's next frame may begin at {@code from}, or as soon after as the pair allows. */
    private void ready(long nowNanos, long fromNanos) {
        waiting = false;
        long lead = controller.enableLeadNanos();
        long silent = wire.lastEndNanos() + silenceNanos;
        startAt = Math.max(Math.max(fromNanos, silent), Math.max(request.driverOffNanos, nowNanos) + lead);
        actAt = startAt - lead;
    }

    private void broadcast(StateQueue queue) {
        if (burst == 0) {
            burst = queue.waiting();
        }
        queue.take(request);
        burst = queue.waiting() == 0 ? 0 : burst - request.count;
        valuesSincePoll += request.count;
        // more than all there are: they change faster than they can be sent
        if (burst < 0 || request.count == 0 || valuesSincePoll > queue.slots()) {
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

    private void poll(boolean addressed) {
        burst = 0;
        valuesSincePoll = 0;
        if (attempt == 0) {
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
}
