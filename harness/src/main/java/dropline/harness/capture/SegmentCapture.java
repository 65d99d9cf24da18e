package dropline.harness.capture;

import dropline.bus.run.SegmentRun;
import dropline.harness.capture.SentFrame.Fate;
import dropline.harness.replay.WatchedRun;
import dropline.protocol.Bytes;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * Gathers, while a segment runs, the frames and the drivers of a stretch. Holds each frame back until it is known what
 * became of it, so what it hands on is complete and in order.
 */
public final class SegmentCapture implements WatchedRun.Watcher {
    private final int segment;
    private final Talkers talkers;
    private final Stretch stretch;
    private final int[] enabled;
    private final long[] enabledSince;
    private final boolean[] shown;
    private final List<List<Integer>> touching = new ArrayList<>();
    private final @Nullable OpenFrame[] latest;
    private final Deque<OpenFrame> open = new ArrayDeque<>();
    private List<SentFrame> frames = new ArrayList<>();
    private List<DriverChange> drivers = new ArrayList<>();
    private IntFunction<Bytes> bytes = talker -> Bytes.of();
    private long reached;
    private boolean inside;
    private boolean ended;

    /**
     * @param segment index of the segment
     * @param talkers who may talk on it
     * @param stretch what is wanted
     */
    public SegmentCapture(int segment, Talkers talkers, Stretch stretch) {
        this.segment = segment;
        this.talkers = talkers;
        this.stretch = stretch;
        int count = talkers.indices().size();
        enabled = new int[count];
        enabledSince = new long[count];
        shown = new boolean[count];
        latest = new OpenFrame[count];
        for (int i = 0; i < count; i++) {
            touching.add(new ArrayList<>());
        }
    }

    @Override
    public void follow(SegmentRun followed) {
        follow(followed::bytes);
    }

    /** Where the bytes of a frame that starts come from, by talker. */
    public void follow(IntFunction<Bytes> source) {
        bytes = source;
    }

    /** Who may talk. */
    public Talkers talkers() {
        return talkers;
    }

    /** All before this instant can be taken now, ns. */
    public long horizonNanos() {
        if (!open.isEmpty()) {
            return open.getFirst().startNanos;
        }
        return ended ? Long.MAX_VALUE : reached;
    }

    /** Takes the frames that are complete, in the order of their start. */
    public List<SentFrame> takeFrames() {
        List<SentFrame> taken = frames;
        frames = new ArrayList<>();
        return taken;
    }

    /** Takes the drivers' changes so far; those that were on when the stretch began are enabled at its begin. */
    public List<DriverChange> takeDrivers() {
        List<DriverChange> taken = drivers;
        drivers = new ArrayList<>();
        return taken;
    }

    @Override
    public void frameStarted(long atNanos, int talker, int frame, int node, int transaction, int chars) {
        enter(atNanos);
        if (talker == CONTROLLER) {
            followed();
        }
        int position = talkers.position(talker);
        List<Integer> others = touching.get(position);
        if (chars > 0 && stretch.holds(atNanos)) {
            OpenFrame started = new OpenFrame(segment, talker, frame, node, transaction, bytes.apply(talker), atNanos);
            others.forEach(started::touchedBy);
            if (enabled[position] > 0) {
                started.driverOnNanos = enabledSince[position];
            }
            if (frame == BROADCAST) {
                started.fate = Fate.SENT;
            } else if (frame != REQUEST && frame != REPLY) {
                started.fate = Fate.NO_FRAME;
            }
            open.add(started);
            latest[position] = started;
        } else if (chars > 0) {
            latest[position] = null;
        }
        others.clear();
    }

    @Override
    public void frameEnded(long atNanos, int talker, int frame, int node, int transaction) {
        enter(atNanos);
        OpenFrame ending = latest[talkers.position(talker)];
        if (ending != null && ending.endNanos == SentFrame.UNKNOWN && ending.transaction == transaction) {
            ending.endNanos = atNanos;
        }
    }

    @Override
    public void driverOn(long atNanos, int talker) {
        enter(atNanos);
        int position = talkers.position(talker);
        if (enabled[position]++ > 0) {
            return;
        }
        enabledSince[position] = atNanos;
        OpenFrame sending = latest[position];
        if (sending != null && sending.endNanos == SentFrame.UNKNOWN && sending.driverOnNanos == SentFrame.UNKNOWN) {
            sending.driverOnNanos = atNanos;
        }
        changed(atNanos, position, true);
    }

    @Override
    public void driverOff(long atNanos, int talker) {
        enter(atNanos);
        int position = talkers.position(talker);
        if (enabled[position] == 0 || --enabled[position] > 0) {
            return;
        }
        OpenFrame sent = latest[position];
        if (sent != null && sent.driverOffNanos == SentFrame.UNKNOWN && sent.driverOnNanos != SentFrame.UNKNOWN) {
            sent.driverOffNanos = atNanos;
        }
        changed(atNanos, position, false);
    }

    @Override
    public void clash(long atNanos, int talker, int other) {
        enter(atNanos);
        touch(talker, other);
        touch(other, talker);
        OpenFrame held = latest[talkers.position(other)];
        if (held != null && held.endNanos != SentFrame.UNKNOWN) {
            held.touchInTail();
        }
    }

    @Override
    public void receivedWrong(long atNanos, int receiver, int talker, int transaction) {
        OpenFrame sent = latest[talkers.position(talker)];
        if (sent != null && sent.transaction == transaction) {
            sent.misheardBy(receiver);
        }
    }

    @Override
    public void overrun(long atNanos, int node, int transaction) {
        OpenFrame sent = latest[talkers.position(CONTROLLER)];
        if (sent != null && sent.transaction == transaction) {
            sent.overrunAt(node);
        }
    }

    @Override
    public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
        decide(node, transaction, Fate.ANSWERED);
    }

    @Override
    public void timedOut(long atNanos, int node, int transaction, int attempt) {
        decide(node, transaction, Fate.TIMED_OUT);
    }

    @Override
    public void ended(long atNanos) {
        enter(atNanos);
        open.forEach(frame -> frames.add(close(frame)));
        open.clear();
        ended = true;
    }

    private void followed() {
        open.forEach(OpenFrame::followed);
        while (!open.isEmpty() && open.getFirst().isSettled()) {
            frames.add(close(open.removeFirst()));
        }
    }

    private SentFrame close(OpenFrame frame) {
        long span = talkers.clock(frame.talker).charsNanos(talkers.format(), frame.bytes.length());
        return frame.close(frame.startNanos + span);
    }

    private void touch(int talker, int other) {
        int position = talkers.position(talker);
        OpenFrame sending = latest[position];
        if (sending != null && sending.endNanos == SentFrame.UNKNOWN) {
            sending.touchedBy(other);
        } else if (sending != null && sending.driverOffNanos == SentFrame.UNKNOWN) {
            sending.touchedBy(other);
        } else {
            touching.get(position).add(other);
        }
    }

    /** The latest request and the latest reply of this node decide a transaction; other replies were not taken. */
    private void decide(int node, int transaction, Fate fate) {
        boolean taken = false;
        for (Iterator<OpenFrame> latestFirst = open.descendingIterator(); latestFirst.hasNext(); ) {
            OpenFrame frame = latestFirst.next();
            boolean polls = frame.kind == REQUEST || frame.kind == REPLY;
            if (polls && frame.transaction == transaction && frame.fate == Fate.OPEN) {
                boolean another = frame.kind == REPLY && (taken || frame.talker != node);
                taken |= frame.kind == REPLY && frame.talker == node;
                frame.fate = another ? Fate.TIMED_OUT : fate;
            }
        }
    }

    /** The drivers that are on when the stretch begins are enabled at its begin. */
    private void enter(long atNanos) {
        reached = atNanos;
        if (inside || atNanos < stretch.fromNanos()) {
            return;
        }
        inside = true;
        for (int i = 0; i < enabled.length; i++) {
            if (enabled[i] > 0) {
                shown[i] = true;
                drivers.add(
                        new DriverChange(stretch.fromNanos(), talkers.indices().get(i), true));
            }
        }
    }

    private void changed(long atNanos, int position, boolean on) {
        OpenFrame sending = latest[position];
        boolean wanted = on
                ? stretch.holds(atNanos) || sending != null && sending.endNanos == SentFrame.UNKNOWN
                : shown[position];
        if (wanted) {
            shown[position] = on;
            drivers.add(new DriverChange(atNanos, talkers.indices().get(position), on));
        }
    }
}
