package dropline.bus.node;

import dropline.bus.chance.Draws;
import dropline.bus.chance.Draws.Purpose;
import dropline.bus.clock.UartClock;
import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.indicator.Shows;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Traffic;
import dropline.protocol.Destination;
import dropline.protocol.NodeStatus;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A board modelled from its profile: a UART with a small FIFO, an interrupt that fills a ring, a main loop with tasks
 * that block it, replies from the interrupt or the loop.
 */
public final class ModelledNode implements NodeBehaviour {
    private static final long BROADCAST_ORDINALS = 1L << 40;
    private static final long LOOP_UNIT_NANOS = 100_000;
    private static final long STATUS_EVERY_NANOS = 1_000_000_000;

    private final int index;
    private final Profile profile;
    private final double bitNanos;
    private final Destination wire;
    private final EventOrder events;
    private final Shows shows;
    private final Timeline timeline;
    private final Buffers buffers;
    private final int[][] slots;
    private final long[] shown;
    private final long silenceNanos;
    private final @Nullable Ailments ailments;
    private final long gapStream;
    private final long lengthStream;
    private final long passStream;
    private final Frame reply;
    private boolean planned;
    private long readyNanos;
    private int boots;
    private int errors;
    private long toldNanos;
    private int toldBoots;
    private int toldErrors;
    private int lastBroadcast;
    private long appliedNanos;

    /**
     * @param index this node in {@link Layout#nodes()}
     * @param faults of the whole run; those of other nodes are left out
     * @param slotsOfPick for each slot of a frame's destination, this node's places where it is shown
     */
    public ModelledNode(
            Segment segment,
            Layout layout,
            int index,
            long seed,
            List<Fault> faults,
            Destination wire,
            int[][] slotsOfPick,
            EventOrder events,
            Shows shows,
            Traffic traffic) {
        Node node = layout.nodes().get(index).node();
        this.index = index;
        this.wire = wire;
        this.events = events;
        this.shows = shows;
        this.slots = slotsOfPick;
        shown = new long[Frame.words(slotsOfPick.length)];
        for (int pick = 0; pick < slotsOfPick.length; pick++) {
            if (slotsOfPick[pick].length > 0) {
                shown[pick / Long.SIZE] |= 1L << pick;
            }
        }
        profile = node.profile();
        long hash = Draws.nameHash(node.name());
        gapStream = Draws.stream(seed, hash, Purpose.REPLY_GAP);
        lengthStream = Draws.stream(seed, hash, Purpose.REPLY_LENGTH);
        passStream = Draws.stream(seed, hash, Purpose.LOOP_PASS);
        timeline = timeline(node, layout, Draws.stream(seed, hash, Purpose.TASK_PHASE));
        buffers = new Buffers(timeline, traffic, profile.fifoChars(), profile.ringChars());
        silenceNanos = segment.silenceNanos();
        UartClock clock = profile.clock(segment.baud());
        bitNanos = clock.bitNanos();
        reply = new Frame(index, slotsOfPick.length, clock, segment.format());
        reply.zerosOnly = profile.transceiver().driver() == Transceiver.Driver.ZEROS_ONLY;
        ailments = Ailments.of(faults, index, node.name(), clock, seed);
    }

    @Override
    public void hear(Frame frame) {
        if (frame.heardNanos < reply.driverOffNanos) {
            return;
        }
        if (buffers.lost(frame) || (ailments != null && !ailments.hasRoom(frame))) {
            errors++;
            events.post(frame.heardNanos, Rank.OVERRUN, index, frame.transaction, 0, 0);
            return;
        }
        long known = frame.heardNanos + silenceNanos;
        if (frame.node == index || frame.node == TraceSink.ALL) {
            apply(frame, known);
        }
        if (frame.kind == TraceSink.REQUEST) {
            plan(frame, known);
        } else if (frame.transaction == lastBroadcast + 1) {
            lastBroadcast++;
        }
    }

    /** Does nothing: what this node does next is known as soon as it has heard a frame. */
    @Override
    public void advanceTo(long nanos) {}

    @Override
    public long quietUntil() {
        return planned ? Math.min(reply.driverOnNanos, reply.startNanos) : QUIET;
    }

    @Override
    public Frame transmission() {
        return reply;
    }

    @Override
    public Frame transmit() {
        planned = false;
        return reply;
    }

    @Override
    public boolean isSilent(long atNanos) {
        return atNanos < readyNanos || (ailments != null && ailments.isSilent(atNanos));
    }

    @Override
    public boolean takes(Frame request) {
        if (ailments == null) {
            return request.node == index;
        }
        return request.node == index
                ? !ailments.suffers(FaultKind.DUPLICATE_ADDRESS, request.heardNanos)
                : ailments.answersFor(request.node, request.heardNanos, ordinal(request));
    }

    @Override
    public boolean misses(Frame frame, boolean afterReply) {
        if (ailments == null) {
            return false;
        }
        if (ailments.struck(FaultKind.COMMON_WIRE_LIFTED, frame.heardNanos, frame.number)) {
            return true;
        }
        return afterReply && ailments.struck(FaultKind.EAVESDROPPER, frame.heardNanos, frame.number);
    }

    @Override
    public boolean floats(long atNanos) {
        return ailments != null && ailments.suffers(FaultKind.FLOATING_RECEIVER, atNanos);
    }

    @Override
    public void heardWrong() {
        errors++;
    }

    @Override
    public void reset(long atNanos, long untilNanos) {
        planned = false;
        reply.driverOffNanos = Math.min(reply.driverOffNanos, atNanos);
        readyNanos = untilNanos;
        boots++;
        lastBroadcast = 0;
        appliedNanos = 0;
        shows.forget(index, atNanos, untilNanos);
        events.post(atNanos, Rank.RESET, index, 0, 0, 0, 0, untilNanos, 0, 0);
    }

    @Override
    public void stall(Indicator.Blocks what, long fromNanos, long untilNanos) {
        timeline.stall(what, fromNanos, untilNanos);
    }

    @Override
    public double bitNanos(long atNanos) {
        return ailments == null ? bitNanos : ailments.clockAt(atNanos).bitNanos();
    }

    @Override
    public NodeStatus status(Frame said) {
        long loop = Math.min(0xFFFF, longestLoop(said.startNanos) / LOOP_UNIT_NANOS);
        return new NodeStatus(
                said.lastBroadcast & 0xFF,
                boots & 0xFF,
                errors & 0xFF,
                (int) loop,
                (int) refreshes(said.startNanos) & 0xFF);
    }

    @Override
    public void tellStatus(long atNanos) {
        if (boots == toldBoots && errors == toldErrors && atNanos - toldNanos < STATUS_EVERY_NANOS) {
            return;
        }
        events.post(
                atNanos,
                Rank.NODE_STATUS,
                index,
                boots,
                errors,
                0,
                0,
                longestLoop(reply.startNanos),
                refreshes(reply.startNanos),
                0);
        toldBoots = boots;
        toldErrors = errors;
        toldNanos = atNanos;
    }

    private long longestLoop(long atNanos) {
        return Math.max(profile.loopPassNanos(), timeline.longestBlock(toldNanos, atNanos));
    }

    private long refreshes(long atNanos) {
        return timeline.refreshesBy(ailments == null ? atNanos : ailments.refreshedUntil(atNanos));
    }

    private void apply(Frame frame, long knownNanos) {
        if (frame.count == 0 || !frame.carriesAnyOf(shown)) {
            return;
        }
        long applied = -1;
        for (int i = 0; i < frame.count; i++) {
            for (int slot : slots[frame.picked[i]]) {
                applied = applied < 0 ? takenNanos(frame, knownNanos) : applied;
                shows.apply(slot, frame.serials[i], frame.values[i], applied, frame.heardNanos);
            }
        }
    }

    /**
     * When the node's loop takes what a frame carried; it takes frames in the order in which they came. Most broadcasts
     * carry nothing for most nodes.
     */
    private long takenNanos(Frame frame, long knownNanos) {
        long ordinal = frame.kind == TraceSink.REQUEST ? ordinal(frame) : BROADCAST_ORDINALS + frame.transaction;
        long pass = (long) (Draws.draw(passStream, ordinal) * profile.loopPassNanos());
        appliedNanos = Math.max(appliedNanos, timeline.loopFree(knownNanos) + pass);
        return appliedNanos;
    }

    private void plan(Frame request, long knownNanos) {
        long ordinal = ordinal(request);
        long gap = Math.max(silenceNanos, profile.replyGap().sampleNanos(Draws.draw(gapStream, ordinal)));
        long free = profile.replyFrom() == Profile.ReplyFrom.LOOP
                ? timeline.loopFree(knownNanos)
                : timeline.interruptsFree(knownNanos);
        // a request is known half a bit before its end; what blocks its node so briefly cannot make a reply come sooner
        // nor does the silence by which it is known count twice: the gap, which begins at the request's end, has it
        long ready = Math.max(request.endNanos, free - silenceNanos);
        reply.kind = TraceSink.REPLY;
        reply.node = request.node;
        reply.transaction = request.transaction;
        reply.attempt = request.attempt;
        reply.count = request.node == index ? request.count : 0;
        System.arraycopy(request.picked, 0, reply.picked, 0, reply.count);
        reply.lastBroadcast = lastBroadcast;
        lastBroadcast = request.lastBroadcast;
        long start = Math.max(ready + gap, knownNanos + profile.enableLeadNanos());
        reply.startNanos = start;
        int chars = wire.replyChars(reply.picked, reply.count, Draws.draw(lengthStream, ordinal));
        if (ailments == null) {
            reply.time(start, chars, profile.enableLeadNanos(), profile.releaseTailNanos());
        } else {
            reply.timedBy(ailments.clockAt(knownNanos));
            reply.time(
                    ailments.start(start, request, ordinal),
                    chars,
                    profile.enableLeadNanos(),
                    profile.releaseTailNanos());
            reply.driverOnNanos = Math.max(reply.driverOnNanos, request.heardNanos);
            ailments.shape(reply, request, ordinal);
        }
        planned = true;
    }

    private static long ordinal(Frame frame) {
        return frame.transaction * 16L + frame.attempt;
    }

    private Timeline timeline(Node node, Layout layout, long phaseStream) {
        int tasks = profile.tasks().size();
        for (Panel panel : node.panels()) {
            tasks += panel.indicators().size();
        }
        Timeline made = new Timeline(tasks);
        for (Profile.Task task : profile.tasks()) {
            made.add(task.everyNanos(), task.takesNanos(), task.blocks(), phaseStream);
        }
        for (Panel panel : node.panels()) {
            for (Indicator indicator : panel.indicators()) {
                if (indicator.kind().refreshes()) {
                    int task = made.add(
                            indicator.refreshEveryNanos(),
                            indicator.refreshTakesNanos(),
                            indicator.blocks(),
                            phaseStream);
                    made.isRefresh(task);
                    refreshed(made, layout, indicator, panel, task);
                }
            }
        }
        return made;
    }

    private void refreshed(Timeline made, Layout layout, Indicator indicator, Panel panel, int task) {
        for (int slot = 0; slot < layout.slots().size(); slot++) {
            Layout.Slot place = layout.slots().get(slot);
            if (place.node() == index
                    && place.indicator().equals(indicator)
                    && place.panel().equals(panel)) {
                shows.refreshedBy(slot, applied -> made.endOf(task, made.startAtOrAfter(task, applied)));
            }
        }
    }
}
