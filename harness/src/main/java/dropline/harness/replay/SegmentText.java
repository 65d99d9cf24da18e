package dropline.harness.replay;

import dropline.bus.trace.TraceSink;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** One segment's events as lines of text, held until they can be merged with the other segments'. */
final class SegmentText implements TraceSink {
    private final int segment;
    private byte[] bytes = new byte[1 << 16];
    private int length;
    private long[] times = new long[1 << 10];
    private int[] ends = new int[1 << 10];
    private int lines;
    private int taken;
    private boolean complete;

    SegmentText(int segment) {
        this.segment = segment;
    }

    /** Whether a line waits. */
    boolean waits() {
        return taken < lines;
    }

    /** Whether no further line will come. */
    boolean complete() {
        return complete;
    }

    /** Time of the line that waits, ns. */
    long nextNanos() {
        return times[taken];
    }

    /** Writes the line that waits. */
    void take(OutputStream out) throws IOException {
        int from = taken == 0 ? 0 : ends[taken - 1];
        out.write(bytes, from, ends[taken] - from);
        taken++;
        if (taken == lines) {
            taken = 0;
            lines = 0;
            length = 0;
        }
    }

    /** Moves the lines that wait to the front, so that what is held does not grow with the run. */
    void compact() {
        if (taken == 0) {
            return;
        }
        int from = ends[taken - 1];
        System.arraycopy(bytes, from, bytes, 0, length - from);
        length -= from;
        System.arraycopy(times, taken, times, 0, lines - taken);
        for (int line = taken; line < lines; line++) {
            ends[line - taken] = ends[line] - from;
        }
        lines -= taken;
        taken = 0;
    }

    @Override
    public void stateChanged(long atNanos, int signal, int serial, long value) {
        begin(atNanos, "state-changed").put(signal).put(serial).put(value).end();
    }

    @Override
    public void stateSent(long atNanos) {
        begin(atNanos, "state-sent").end();
    }

    @Override
    public void queued(long atNanos, int destination, int signal, int serial) {
        begin(atNanos, "queued").put(destination).put(signal).put(serial).end();
    }

    @Override
    public void coalesced(long atNanos, int destination, int signal, int serial) {
        begin(atNanos, "coalesced").put(destination).put(signal).put(serial).end();
    }

    @Override
    public void frameStarted(long atNanos, int talker, int frame, int node, int transaction, int chars) {
        begin(atNanos, "frame-started")
                .put(talker)
                .put(frame)
                .put(node)
                .put(transaction)
                .put(chars)
                .end();
    }

    @Override
    public void carried(long atNanos, int destination, int signal, int serial, int transaction) {
        begin(atNanos, "carried")
                .put(destination)
                .put(signal)
                .put(serial)
                .put(transaction)
                .end();
    }

    @Override
    public void frameEnded(long atNanos, int talker, int frame, int node, int transaction) {
        begin(atNanos, "frame-ended")
                .put(talker)
                .put(frame)
                .put(node)
                .put(transaction)
                .end();
    }

    @Override
    public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
        begin(atNanos, "answered")
                .put(node)
                .put(transaction)
                .put(attempt)
                .put(gapNanos)
                .end();
    }

    @Override
    public void timedOut(long atNanos, int node, int transaction, int attempt) {
        begin(atNanos, "timed-out").put(node).put(transaction).put(attempt).end();
    }

    @Override
    public void gaveUp(long atNanos, int node, int transaction) {
        begin(atNanos, "gave-up").put(node).put(transaction).end();
    }

    @Override
    public void backedOff(long atNanos, int node, long untilNanos) {
        begin(atNanos, "backed-off").put(node).put(untilNanos).end();
    }

    @Override
    public void cycleStarted(long atNanos, int cycle) {
        begin(atNanos, "cycle-started").put(cycle).end();
    }

    @Override
    public void nodeStatus(
            long atNanos, int node, int boots, int receiveErrors, long longestLoopNanos, long refreshes) {
        begin(atNanos, "node-status")
                .put(node)
                .put(boots)
                .put(receiveErrors)
                .put(longestLoopNanos)
                .put(refreshes)
                .end();
    }

    @Override
    public void told(long atNanos, int control, int serial) {
        begin(atNanos, "told").put(control).put(serial).end();
    }

    @Override
    public void driverOn(long atNanos, int talker) {
        begin(atNanos, "driver-on").put(talker).end();
    }

    @Override
    public void driverOff(long atNanos, int talker) {
        begin(atNanos, "driver-off").put(talker).end();
    }

    @Override
    public void clash(long atNanos, int talker, int other) {
        begin(atNanos, "clash").put(talker).put(other).end();
    }

    @Override
    public void receivedWrong(long atNanos, int receiver, int talker, int transaction) {
        begin(atNanos, "received-wrong")
                .put(receiver)
                .put(talker)
                .put(transaction)
                .end();
    }

    @Override
    public void phantom(long atNanos, int receiver, int chars) {
        begin(atNanos, "phantom").put(receiver).put(chars).end();
    }

    @Override
    public void reset(long atNanos, int node, long readyNanos) {
        begin(atNanos, "reset").put(node).put(readyNanos).end();
    }

    @Override
    public void overrun(long atNanos, int node, int transaction) {
        begin(atNanos, "overrun").put(node).put(transaction).end();
    }

    @Override
    public void applied(long atNanos, int slot, int serial, long heardNanos) {
        begin(atNanos, "applied").put(slot).put(serial).put(heardNanos).end();
    }

    @Override
    public void shown(long atNanos, int slot, int serial) {
        begin(atNanos, "shown").put(slot).put(serial).end();
    }

    @Override
    public void moved(long atNanos, int slot, long from, long untilNanos, long to) {
        begin(atNanos, "moved").put(slot).put(from).put(untilNanos).put(to).end();
    }

    @Override
    public void controlMoved(long atNanos, int control, int serial, int value) {
        begin(atNanos, "control-moved").put(control).put(serial).put(value).end();
    }

    @Override
    public void sampled(long atNanos, int control, int serial) {
        begin(atNanos, "sampled").put(control).put(serial).end();
    }

    @Override
    public void ended(long atNanos) {
        begin(atNanos, "ended").end();
        complete = true;
    }

    private SegmentText begin(long atNanos, String event) {
        if (lines == times.length) {
            times = Arrays.copyOf(times, lines * 2);
            ends = Arrays.copyOf(ends, lines * 2);
        }
        times[lines] = atNanos;
        ascii(Long.toString(atNanos));
        put(segment);
        ascii(" ");
        ascii(event);
        return this;
    }

    private SegmentText put(long value) {
        ascii(" ");
        ascii(Long.toString(value));
        return this;
    }

    private void end() {
        ascii("\n");
        ends[lines++] = length;
    }

    private void ascii(String text) {
        byte[] more = text.getBytes(StandardCharsets.US_ASCII);
        if (length + more.length > bytes.length) {
            bytes = Arrays.copyOf(bytes, bytes.length * 2);
        }
        System.arraycopy(more, 0, bytes, length, more.length);
        length += more.length;
    }
}
