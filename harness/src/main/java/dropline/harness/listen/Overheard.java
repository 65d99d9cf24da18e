package dropline.harness.listen;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.run.Tallies;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import dropline.bus.trace.TraceSink;
import dropline.protocol.Bytes;
import dropline.protocol.Heard;
import dropline.protocol.NodeStatus;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What was heard on a pair, told as a trace. What its controller means to do is not known from outside: a poll of the
 * same node right after one that went unanswered counts as its next try, a poll of another as giving up; a round begins
 * when a node is asked more often than its weight; and a value has changed when another is carried.
 */
public final class Overheard implements Hearer {
    private static final int UNKNOWN = -1;

    private final EventOrder events;
    private final SignalNumbers numbers;
    private final long timeOutNanos;
    private final Map<Integer, Integer> nodes = new HashMap<>();
    private final List<Map<Integer, Integer>> controls = new ArrayList<>();
    private final Tallies tallies;
    private final @Nullable Long[] carried;
    private final int[] carriedSerial;
    private final @Nullable Long[] told;
    private final int[] toldSerial;
    private final int[] weights;
    private final int[] turns;
    private Bytes bytes = Bytes.of();
    private long reached;
    private int asked = UNKNOWN;
    private long askedEndNanos;
    private int unanswered = UNKNOWN;
    private int attempt;
    private int transaction;
    private int broadcast;
    private int cycle;

    /**
     * @param pit of one segment
     * @param sink takes the events, sorted by time
     */
    public Overheard(Pit pit, TraceSink sink) {
        events = new EventOrder(sink, (rank, at, index, serial) -> true);
        Segment segment = pit.segments().get(0);
        numbers = new SignalNumbers(pit, segment);
        timeOutNanos = segment.controller().timeOutNanos();
        Layout layout = Layout.of(pit);
        for (int n = 0; n < layout.nodes().size(); n++) {
            nodes.put(layout.nodes().get(n).node().address(), n);
            controls.add(new HashMap<>());
        }
        weights =
                layout.nodes().stream().mapToInt(place -> place.node().weight()).toArray();
        turns = new int[weights.length];
        for (int c = 0; c < layout.controls().size(); c++) {
            Layout.ControlPlace place = layout.controls().get(c);
            controls.get(place.node()).put(place.control().number(), c);
        }
        tallies = new Tallies(layout.nodes().size());
        carried = new Long[pit.signals().size()];
        carriedSerial = new int[carried.length];
        told = new Long[layout.controls().size()];
        toldSerial = new int[told.length];
    }

    /** What stands in the frame that has just begun. */
    public Bytes bytes() {
        return bytes;
    }

    @Override
    public void frame(Heard frame, long startNanos, long endNanos, Bytes said) {
        bytes = said;
        // time stamps of an adapter may overlap by a little
        long start = Math.max(reached, startNanos);
        long end = Math.max(start + 1, endNanos);
        if (frame.kind() == Heard.Kind.REPLY) {
            reply(frame, start, end);
        } else {
            unanswered(start);
            if (frame.kind() == Heard.Kind.REQUEST) {
                request(frame, start, end);
            } else {
                sent(frame, TraceSink.ALL, start, end, ++broadcast);
            }
        }
        reached = end;
        events.release(end);
    }

    /** Whoever was asked last, and has not answered, does so no more. */
    private void unanswered(long nowNanos) {
        if (asked >= 0) {
            reached = Math.max(reached, Math.min(nowNanos, askedEndNanos + timeOutNanos));
            events.post(reached, Rank.TIMED_OUT, asked, transaction, attempt, 0);
            unanswered = asked;
        }
        asked = UNKNOWN;
    }

    private void request(Heard frame, long start, long end) {
        int node = nodes.getOrDefault(frame.address(), UNKNOWN);
        boolean again = node >= 0 && node == unanswered;
        if (!again && unanswered >= 0) {
            events.post(reached, Rank.GAVE_UP, unanswered, transaction, 0, 0);
        }
        unanswered = UNKNOWN;
        if (node < 0) {
            return;
        }
        attempt = again ? attempt + 1 : 1;
        transaction += again ? 0 : 1;
        if (!again && (cycle == 0 || ++turns[node] > weights[node])) {
            Arrays.fill(turns, 0);
            turns[node] = 1;
            events.post(start, Rank.CYCLE_STARTED, TraceSink.CONTROLLER, ++cycle, 0, 0);
        }
        sent(frame, node, start, end, transaction);
        asked = node;
        askedEndNanos = end;
    }

    private void sent(Heard frame, int node, long start, long end, int number) {
        for (Heard.Value value : frame.values()) {
            int signal = numbers.signal(frame, value.number());
            if (signal >= 0) {
                long now = numbers.value(signal, value);
                Long before = carried[signal];
                if (before == null || before != now) {
                    carried[signal] = now;
                    events.post(start, Rank.STATE_CHANGED, signal, ++carriedSerial[signal], 0, 0, 0, now, 0, 0);
                }
            }
        }
        if (!frame.values().isEmpty()) {
            events.post(start, Rank.STATE_SENT, TraceSink.CONTROLLER, 0, 0, 0);
        }
        int kind = node == TraceSink.ALL ? TraceSink.BROADCAST : TraceSink.REQUEST;
        frame(start, end, TraceSink.CONTROLLER, kind, node, number);
        for (Heard.Value value : frame.values()) {
            int signal = numbers.signal(frame, value.number());
            if (signal >= 0) {
                events.post(start, Rank.CARRIED, node, signal, carriedSerial[signal], number);
            }
        }
    }

    private void frame(long start, long end, int talker, int kind, int node, int number) {
        events.post(start, Rank.DRIVER_ON, talker, 0, 0, 0);
        events.post(start, Rank.FRAME_STARTED, talker, kind, node, number, bytes.length(), 0, 0, 0);
        events.post(end, Rank.FRAME_ENDED, talker, kind, node, number);
        events.post(end, Rank.DRIVER_OFF, talker, 0, 0, 0);
    }

    private void reply(Heard frame, long start, long end) {
        int node = nodes.getOrDefault(frame.address(), UNKNOWN);
        if (node < 0) {
            return;
        }
        frame(start, end, node, TraceSink.REPLY, node, transaction);
        if (node != asked) {
            return;
        }
        asked = UNKNOWN;
        unanswered = UNKNOWN;
        events.post(end, Rank.ANSWERED, node, transaction, attempt, 0, 0, start - askedEndNanos, 0, 0);
        NodeStatus status = frame.status();
        if (status != null && tallies.isNews(node, status, end)) {
            events.post(
                    end,
                    Rank.NODE_STATUS,
                    node,
                    tallies.boots(node),
                    tallies.errors(node),
                    0,
                    0,
                    status.longestLoopUnits() * Tallies.LOOP_UNIT_NANOS,
                    tallies.refreshes(node),
                    0);
        }
        for (Heard.Value value : frame.controls()) {
            Integer control = controls.get(node).get(value.number());
            if (control != null) {
                tell(end, control, value.value());
            }
        }
    }

    /** What a control is at first is no move of it. */
    private void tell(long atNanos, int control, long now) {
        Long before = told[control];
        if (before != null && before != now) {
            events.post(atNanos, Rank.TOLD, control, ++toldSerial[control], 0, 0);
        }
        told[control] = now;
    }

    @Override
    public void ended(long atNanos) {
        unanswered(Math.max(reached, atNanos));
        if (unanswered >= 0) {
            events.post(reached, Rank.GAVE_UP, unanswered, transaction, 0, 0);
        }
        reached = Math.max(reached, atNanos);
        events.end(reached);
    }

    /** How far it has come, ns since the first byte. */
    public long reachedNanos() {
        return reached;
    }

    /** The digest of the trace. */
    public long digest() {
        return events.digest();
    }
}
