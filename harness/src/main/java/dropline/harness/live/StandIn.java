package dropline.harness.live;

import dropline.bus.clock.UartClock;
import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.run.NodesRun;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.harness.link.Arrival;
import dropline.harness.link.Link;
import dropline.harness.recording.Moves;
import dropline.protocol.Bytes;
import java.io.IOException;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/**
 * A segment's nodes, played in real time for somebody else's controller: modelled from their profiles, paced at the
 * baud rate, with faults if one wants.
 */
public final class StandIn {
    /** It looks at least so often whether to stop, ns. */
    private static final long LOOK_NANOS = 50_000_000;

    private final Segment segment;
    private final Link link;
    private final boolean isOnAWire;
    private final NodesRun run;
    private final Moves moves;
    private final UartClock clock;
    private long begunNanos = -1;
    private long replies;
    private long received;
    private long latestNanos;
    private @Nullable IOException failed;

    /**
     * @param segmentIndex index into {@link Pit#segments()}
     * @param faults what goes wrong
     * @param moves of the segment's controls, which begin when the first byte is heard
     * @param sink receives the segment's events in order, by a clock that begins with the link's
     * @throws UnsupportedOperationException where the segment's protocol knows lengths only
     */
    public StandIn(Pit pit, int segmentIndex, long seed, List<Fault> faults, Moves moves, TraceSink sink, Link link) {
        segment = pit.segments().get(segmentIndex);
        this.link = link;
        isOnAWire = link.isOnAWire();
        this.moves = moves;
        clock = UartClock.exact(segment.baud());
        run = new NodesRun(pit, segmentIndex, seed, faults, sink, new NodesRun.Ear() {
            @Override
            public void talks(Frame reply, Bytes bytes) {
                if (isOnAWire) {
                    say(reply.startNanos, bytes);
                }
            }

            @Override
            public void heard(Frame reply, Bytes bytes) {
                if (!isOnAWire) {
                    say(reply.heardNanos, bytes);
                }
            }
        });
    }

    /**
     * Plays until told to stop.
     *
     * @throws IOException if the link is gone for good, with words for the person
     */
    public void play(BooleanSupplier stop) throws IOException {
        while (!stop.getAsBoolean()) {
            long wake = Math.min(run.nextNanos(), link.now() + LOOK_NANOS);
            Arrival arrival = link.await(wake);
            if (arrival instanceof Arrival.Received heard) {
                take(heard);
            }
            catchUp();
            if (failed != null) {
                throw failed;
            }
        }
        run.end();
    }

    private void take(Arrival.Received heard) throws IOException {
        if (begunNanos < 0) {
            begunNanos = run.reachedNanos();
        }
        received += heard.bytes().length();
        long span = !isOnAWire
                ? 0
                : clock.heardNanos(segment.format(), heard.bytes().length());
        long start = Math.max(run.reachedNanos(), heard.atNanos() - span);
        advance(start);
        run.say(start, heard.bytes());
    }

    /** Lets happen what was due; the rest waits, since what comes next may have begun before now. */
    private void catchUp() throws IOException {
        long now = link.now();
        while (run.nextNanos() <= now && failed == null) {
            advance(run.nextNanos() + 1);
        }
        if (!isOnAWire) {
            advance(Math.max(now, run.reachedNanos()));
        }
    }

    private void advance(long toNanos) throws IOException {
        if (begunNanos >= 0 && toNanos > run.reachedNanos()) {
            run.offer(moves.until(toNanos, begunNanos));
        }
        run.advanceTo(toNanos);
    }

    private void say(long dueNanos, Bytes bytes) {
        latestNanos = Math.max(latestNanos, link.now() - dueNanos);
        replies++;
        try {
            link.send(bytes.toArray(), 0, bytes.length());
        } catch (IOException gone) {
            failed = gone;
        }
    }

    /** How many replies were given. */
    public long replies() {
        return replies;
    }

    /** How many bytes came. */
    public long receivedBytes() {
        return received;
    }

    /** By how much the latest of its replies was late, ns: the host's doing. */
    public long latestNanos() {
        return latestNanos;
    }

    /** The value of a signal that was understood last, in units of its resolution; 0 if none was. */
    public long value(int signal) {
        return run.value(signal);
    }
}
