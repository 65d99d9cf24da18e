package dropline.scenarios.live;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.run.SegmentRun;
import dropline.harness.link.Arrival;
import dropline.harness.replay.WatchedRun;
import dropline.protocol.Bytes;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What stands on a segment's pair, as one who listens has it; without a run to follow, it only counts. */
final class Pair implements WatchedRun.Watcher {
    final Segment segment;
    final List<Arrival.Received> heard = new ArrayList<>();
    final long[] asked;
    final long[] answered;
    final long[] gaps;
    final long[] values;
    private @Nullable SegmentRun run;
    final long[] timedOut;
    long broadcasts;
    long gaveUp;
    long cycles;
    long carried;

    Pair(Pit pit, Segment segment) {
        this.segment = segment;
        int nodes = Layout.of(pit).nodes().size();
        asked = new long[nodes];
        answered = new long[nodes];
        gaps = new long[nodes];
        timedOut = new long[nodes];
        values = new long[pit.signals().size()];
    }

    @Override
    public void follow(SegmentRun followed) {
        run = followed;
    }

    @Override
    public void stateChanged(long atNanos, int signal, int serial, long value) {
        values[signal] = value;
    }

    @Override
    public void frameStarted(long atNanos, int talker, int frame, int node, int transaction, int chars) {
        if (run != null) {
            Bytes bytes = run.bytes(talker);
            long at = atNanos + UartClock.exact(segment.baud()).heardNanos(segment.format(), bytes.length());
            heard.add(new Arrival.Received(at, bytes));
        }
        if (frame == REQUEST) {
            asked[node]++;
        } else if (frame == BROADCAST) {
            broadcasts++;
        }
    }

    @Override
    public void timedOut(long atNanos, int node, int transaction, int attempt) {
        timedOut[node]++;
    }

    @Override
    public void gaveUp(long atNanos, int node, int transaction) {
        gaveUp++;
    }

    @Override
    public void cycleStarted(long atNanos, int cycle) {
        cycles = cycle;
    }

    @Override
    public void carried(long atNanos, int destination, int signal, int serial, int transaction) {
        carried++;
    }

    @Override
    public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
        answered[node]++;
        gaps[node] = Math.max(gaps[node], gapNanos);
    }
}
