package dropline.bus.wire;

import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import dropline.bus.trace.TraceSink;
import dropline.protocol.Bytes;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The pair: which transmissions are on it, and which of them touch. What becomes of a frame that is touched before it
 * has been heard is for {@link Reception} to say; one touched only in its release tail was already heard.
 */
public final class Wire {
    /** Gives the bytes of a frame that is on the pair. */
    @FunctionalInterface
    public interface Content {
        Bytes of(Frame frame);
    }

    /** In place of who replied: the last frame was no reply. */
    private static final int NOBODY = Integer.MIN_VALUE;

    private final EventOrder events;
    private final boolean isShared;

    /** A transmission that touches a frame is looked at from at most this long before it. */
    private static final long MOST_BEFORE_NANOS = 20_000_000;

    private final Traffic traffic = new Traffic();
    private Frame[] active;
    private int count;
    private long lastOffNanos;
    private long transmissions;
    private long newestNumber;
    private int replier = NOBODY;
    private int replierBefore = NOBODY;
    private long lastEndNanos = Long.MIN_VALUE / 2;

    /**
     * @param events receives what happens
     * @param talkers how many may drive at once at most
     * @param isShared whether all talk on one pair; if not, each talks on a line of its own and nothing touches
     */
    public Wire(EventOrder events, int talkers, boolean isShared) {
        this.events = events;
        this.isShared = isShared;
        this.active = new Frame[talkers];
    }

    /**
     * Enables a talker's driver for a timed frame; called in order of {@code driverOnNanos}. A talker reuses its frame,
     * so one already here is its last one, over and done.
     */
    public void begin(Frame frame) {
        join(frame);
        tellOn(frame.talker, frame.driverOnNanos);
        if (frame.chars > 0) {
            tell(frame);
        }
        tellOff(frame.talker, frame.driverOffNanos);
    }

    /** As above, but that nothing is told of it except what it touches. */
    public void join(Frame frame) {
        int kept = 0;
        long needed = firstUnheardNanos(frame);
        for (int i = 0; i < count; i++) {
            Frame other = active[i];
            if (other == frame) {
                continue;
            }
            if (isShared && touch(frame, other) && !isOneDriver(frame, other)) {
                frame.clashed = true;
                if (!other.heard) {
                    other.clashed = true;
                }
                if (!frame.isPart && !other.isPart) {
                    long at = Math.max(frame.driverOnNanos, other.driverOnNanos);
                    events.post(at, Rank.CLASH, frame.talker, other.talker, 0, 0);
                }
            }
            if (!other.heard || other.driverOffNanos > needed) {
                active[kept++] = other;
            }
        }
        if (kept == active.length) {
            active = Arrays.copyOf(active, 2 * kept);
        }
        active[kept] = frame;
        count = kept + 1;
        frame.number = ++transmissions;
        frame.quietSinceNanos = lastOffNanos;
        if (frame.chars == 0) {
            return;
        }
        boolean isReply = frame.kind == TraceSink.REPLY || frame.kind == Frame.CHARACTER;
        if (isShared || !isReply) {
            traffic.add(frame);
        }
        replierBefore = replier;
        replier = isReply ? frame.talker : NOBODY;
        newestNumber = frame.number;
        lastOffNanos = Math.max(lastOffNanos, frame.driverOffNanos);
        lastEndNanos = Math.max(lastEndNanos, frame.endNanos);
    }

    /** A driver is enabled. */
    public void tellOn(int talker, long atNanos) {
        events.post(atNanos, Rank.DRIVER_ON, talker, 0, 0, 0);
    }

    /** A driver lets go. */
    public void tellOff(int talker, long atNanos) {
        events.post(atNanos, Rank.DRIVER_OFF, talker, 0, 0, 0);
    }

    /** A frame that was on the pair. */
    public void tell(Frame frame) {
        events.post(
                frame.startNanos,
                Rank.FRAME_STARTED,
                frame.talker,
                frame.kind,
                frame.node,
                frame.transaction,
                frame.chars,
                0,
                0,
                0);
        events.post(frame.endNanos, Rank.FRAME_ENDED, frame.talker, frame.kind, frame.node, frame.transaction);
    }

    /** The transmission that is heard next, or null when all have been. */
    public @Nullable Frame nextHeard() {
        Frame next = null;
        for (int i = 0; i < count; i++) {
            Frame frame = active[i];
            if (!frame.heard && (next == null || frame.heardNanos < next.heardNanos)) {
                next = frame;
            }
        }
        return next;
    }

    /**
     * Gives a waveform every transmission that touches a frame, the frame itself included; tells when the first of them
     * began to drive, ns.
     */
    long collect(Frame frame, Waveform wave) {
        long first = Math.min(frame.driverOnNanos, frame.startNanos);
        long earliest = first - MOST_BEFORE_NANOS;
        wave.clear();
        for (int i = 0; i < count; i++) {
            Frame other = active[i];
            boolean touches = other == frame
                    || (isShared
                            && other.driverOffNanos > frame.driverOnNanos
                            && other.driverOnNanos < frame.heardNanos);
            if (touches) {
                wave.add(other);
                first = Math.min(first, Math.max(other.driverOnNanos, earliest));
            }
        }
        return first;
    }

    /** Gives a waveform every transmission that a node may hear at some time between two instants. */
    void collect(long fromNanos, long toNanos, Waveform wave) {
        wave.clear();
        for (int i = 0; i < count; i++) {
            Frame frame = active[i];
            boolean isThere = isShared || frame.talker == TraceSink.CONTROLLER;
            if (isThere && frame.driverOffNanos > fromNanos && frame.driverOnNanos < toNanos) {
                wave.add(frame);
            }
        }
    }

    private static boolean touch(Frame one, Frame other) {
        return other.driverOffNanos > one.driverOnNanos && other.driverOnNanos < one.driverOffNanos;
    }

    /** A driver that is stuck sends its node's frames too. */
    private static boolean isOneDriver(Frame one, Frame other) {
        return one.talker == other.talker && (one.chars == 0 || other.chars == 0);
    }

    private long firstUnheardNanos(Frame next) {
        long first = next.driverOnNanos;
        for (int i = 0; i < count; i++) {
            if (!active[i].heard) {
                first = Math.min(first, active[i].driverOnNanos);
            }
        }
        return first;
    }

    /** End of the last stop bit so far. */
    public long lastEndNanos() {
        return lastEndNanos;
    }

    /** Whether the last frame before this one was a reply of somebody but this node. */
    public boolean afterReplyOfAnother(Frame frame, int node) {
        int last = frame.number == newestNumber ? replierBefore : replier;
        return last != NOBODY && last != node;
    }

    /** This frame turns out to be a reply, which somebody played. */
    public void isReply(Frame played) {
        if (played.number == newestNumber) {
            replier = TraceSink.CONTROLLER;
        }
    }

    /** The characters that went over the pair: where it is not shared, those that nodes hear. */
    public Traffic traffic() {
        return traffic;
    }
}
