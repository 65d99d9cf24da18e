package dropline.harness.capture;

import dropline.bus.trace.TraceSink;
import dropline.harness.capture.SentFrame.Fate;
import dropline.protocol.Bytes;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** A frame about which not all is known yet. */
final class OpenFrame {
    /** A driver that holds on for so many frames of the controller is not waited for any longer. */
    private static final int PATIENCE = 8;

    final int segment;
    final int talker;
    final int kind;
    final int node;
    final int transaction;
    final Bytes bytes;
    final long startNanos;
    private final TreeSet<Integer> touched = new TreeSet<>();
    private final TreeSet<Integer> misheard = new TreeSet<>();
    private final List<Integer> overrun = new ArrayList<>();
    private boolean tailTouched;
    long endNanos = SentFrame.UNKNOWN;
    long driverOnNanos = SentFrame.UNKNOWN;
    long driverOffNanos = SentFrame.UNKNOWN;
    Fate fate = Fate.OPEN;
    private int followed;

    OpenFrame(int segment, int talker, int kind, int node, int transaction, Bytes bytes, long startNanos) {
        this.segment = segment;
        this.talker = talker;
        this.kind = kind;
        this.node = node;
        this.transaction = transaction;
        this.bytes = bytes;
        this.startNanos = startNanos;
    }

    void touchedBy(int other) {
        touched.add(other);
    }

    void misheardBy(int receiver) {
        misheard.add(receiver);
    }

    void touchInTail() {
        tailTouched = true;
    }

    void overrunAt(int node) {
        if (!overrun.contains(node)) {
            overrun.add(node);
        }
    }

    /** The controller has gone on to its next frame: what was to become of this one has become of it. */
    void followed() {
        followed++;
        if (kind == TraceSink.REPLY && fate == Fate.OPEN && endNanos != SentFrame.UNKNOWN) {
            fate = Fate.TIMED_OUT;
        }
    }

    /** Whether nothing more can be learnt. */
    boolean isSettled() {
        boolean over = endNanos != SentFrame.UNKNOWN && driverOffNanos != SentFrame.UNKNOWN && followed > 0;
        return over || followed > PATIENCE;
    }

    /** As it stands now; an end that did not come is replaced by the talker's own. */
    SentFrame close(long nominalEndNanos) {
        return new SentFrame(
                segment,
                talker,
                kind,
                node,
                transaction,
                bytes,
                startNanos,
                endNanos == SentFrame.UNKNOWN ? nominalEndNanos : endNanos,
                driverOnNanos,
                driverOffNanos,
                fate,
                List.copyOf(touched),
                List.copyOf(misheard),
                tailTouched,
                overrun);
    }
}
