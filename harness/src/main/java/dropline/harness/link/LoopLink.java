package dropline.harness.link;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.run.NodesRun;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.harness.recording.Moves;
import dropline.protocol.Bytes;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A way to the modelled nodes of a segment, in simulated time: nothing is waited for, and every instant is exact. Each
 * character comes by itself; what a node says is told once it has said all of it.
 */
public final class LoopLink implements Link {
    private final Segment segment;
    private final NodesRun run;
    private final Moves moves;
    private final ArrayDeque<Arrival> arrived = new ArrayDeque<>();

    /**
     * @param segmentIndex index into {@link Pit#segments()}
     * @param faults what goes wrong; those of other segments are left out
     * @param moves of the segment's controls, from the begin of the link's clock on
     * @throws UnsupportedOperationException where the segment's protocol knows lengths only
     */
    public LoopLink(Pit pit, int segmentIndex, long seed, List<Fault> faults, Moves moves) {
        this.moves = moves;
        segment = pit.segments().get(segmentIndex);
        List<Fault> all = new ArrayList<>(faults);
        all.add(restartAtWill(segmentIndex));
        run = new NodesRun(pit, segmentIndex, seed, all, new TraceSink() {}, new NodesRun.Ear() {
            @Override
            public void talks(Frame reply, Bytes bytes) {
                // told once it is over
            }

            @Override
            public void heard(Frame reply, Bytes bytes) {
                take(reply, bytes);
            }
        });
    }

    /** A brown-out that never comes by itself: nodes that may forget must be stepped. */
    private static Fault restartAtWill(int segment) {
        return new Fault(FaultKind.BROWN_OUT, segment, -1, -1, -1, Long.MAX_VALUE - 1, Fault.TO_THE_END, 0, 0);
    }

    private void take(Frame reply, Bytes bytes) {
        double charNanos = segment.format().bits() * reply.bitNanos();
        for (int i = 0; i < bytes.length(); i++) {
            long at = reply.heardNanos - Math.round((bytes.length() - 1 - i) * charNanos);
            arrived.add(new Arrival.Received(at, bytes.part(i, i + 1)));
        }
    }

    @Override
    public long now() {
        return run.reachedNanos();
    }

    @Override
    public long send(byte[] bytes, int offset, int length) {
        return run.say(run.reachedNanos(), Bytes.copyOf(bytes, offset, length));
    }

    @Override
    public @Nullable Arrival await(long deadlineNanos) throws IOException {
        while (arrived.isEmpty() && run.reachedNanos() < deadlineNanos) {
            long until = Math.min(deadlineNanos, beyond(run.nextNanos()));
            run.offer(moves.until(until, 0));
            run.advanceTo(until);
        }
        return arrived.poll();
    }

    /** The value of a signal that a node understood last, in units of its resolution; 0 if none did. */
    public long value(int signal) {
        return run.value(signal);
    }

    private static long beyond(long nanos) {
        return nanos == Long.MAX_VALUE ? nanos : nanos + 1;
    }

    @Override
    public boolean restart() {
        run.restart();
        return true;
    }

    @Override
    public boolean tune(int baud) {
        run.tune(baud);
        return true;
    }

    @Override
    public boolean isExact() {
        return true;
    }

    @Override
    public boolean isModelled() {
        return true;
    }

    @Override
    public boolean isOnAWire() {
        return true;
    }

    @Override
    public String where() {
        return "the modelled segment " + segment.name();
    }

    @Override
    public void close() {
        arrived.clear();
    }
}
