package dropline.bus.wire;

import dropline.bus.trace.EventOrder;
import dropline.bus.trace.Rank;
import org.jspecify.annotations.Nullable;

/**
 * The pair: which transmissions are on it, and which of them touch. At this level of detail a frame that touches
 * another transmission before it has been heard is received by nobody; one touched only in its release tail was already
 * heard.
 */
public final class Wire {
    private final EventOrder events;
    private final Traffic traffic = new Traffic();
    private final Frame[] active;
    private int count;
    private long lastOffNanos;
    private long lastEndNanos = Long.MIN_VALUE / 2;

    /**
     * @param events receives what happens
     * @param talkers how many may drive at once at most
     */
    public Wire(EventOrder events, int talkers) {
        this.events = events;
        this.active = new Frame[talkers];
    }

    /**
     * Enables a talker's driver for a timed frame; called in order of {@code driverOnNanos}. A talker reuses its frame,
     * so one already here is its last one, over and done.
     */
    public void begin(Frame frame) {
        int kept = 0;
        for (int i = 0; i < count; i++) {
            Frame other = active[i];
            if (other == frame) {
                continue;
            }
            if (other.driverOffNanos > frame.driverOnNanos) {
                active[kept++] = other;
                frame.clashed = true;
                if (!other.heard) {
                    other.clashed = true;
                }
                events.post(frame.driverOnNanos, Rank.CLASH, frame.talker, other.talker, 0, 0);
            } else if (!other.heard) {
                active[kept++] = other;
            }
        }
        active[kept] = frame;
        count = kept + 1;
        traffic.add(frame);
        lastOffNanos = Math.max(lastOffNanos, frame.driverOffNanos);
        lastEndNanos = Math.max(lastEndNanos, frame.endNanos);
        events.post(frame.driverOnNanos, Rank.DRIVER_ON, frame.talker, 0, 0, 0);
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
        events.post(frame.driverOffNanos, Rank.DRIVER_OFF, frame.talker, 0, 0, 0);
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

    /** When the last driver so far lets go. */
    public long lastOffNanos() {
        return lastOffNanos;
    }

    /** End of the last stop bit so far. */
    public long lastEndNanos() {
        return lastEndNanos;
    }

    /** The characters that went over the pair. */
    public Traffic traffic() {
        return traffic;
    }
}
