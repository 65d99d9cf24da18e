package dropline.harness.capture;

import dropline.bus.trace.TraceSink;
import dropline.protocol.Bytes;
import java.util.List;

/**
 * A frame that stood on the pair, and what became of it.
 *
 * @param segment index of its segment
 * @param talker index of a node, or {@link TraceSink#CONTROLLER}
 * @param kind {@link TraceSink#REQUEST}, {@link TraceSink#REPLY}, {@link TraceSink#BROADCAST}, or another number for
 *     characters that are no frame
 * @param node the node polled or replying, or {@link TraceSink#ALL}
 * @param transaction as the trace counts it
 * @param bytes what was sent
 * @param startNanos first start bit, ns since the start of the run
 * @param endNanos end of the last stop bit; where the run ended before, as the talker's clock has it
 * @param driverOnNanos when its driver was enabled; {@link #UNKNOWN} if never
 * @param driverOffNanos when its driver let go; {@link #UNKNOWN} if it held on
 * @param fate what became of it
 * @param touched who else was on the pair meanwhile: node indices, or {@link TraceSink#CONTROLLER}
 * @param misheard who did not receive it as it was sent: node indices, or {@link TraceSink#CONTROLLER}
 * @param tailTouched whether it was touched in its release tail, when it was over
 * @param overrun nodes in whose buffers it was lost
 */
public record SentFrame(
        int segment,
        int talker,
        int kind,
        int node,
        int transaction,
        Bytes bytes,
        long startNanos,
        long endNanos,
        long driverOnNanos,
        long driverOffNanos,
        Fate fate,
        List<Integer> touched,
        List<Integer> misheard,
        boolean tailTouched,
        List<Integer> overrun) {

    /** In place of an instant that did not come. */
    public static final long UNKNOWN = Long.MIN_VALUE;

    /** What became of a frame. */
    public enum Fate {
        /** A request whose reply the controller took, or that reply. */
        ANSWERED("answered"),
        /** A request without a good reply by its deadline, or a reply that was not taken. */
        TIMED_OUT("timed out"),
        /** A broadcast: nobody replies. */
        SENT("sent to all"),
        /** Characters that are no frame. */
        NO_FRAME("no frame"),
        /** The run ended first. */
        OPEN("the run ended first");

        private final String words;

        Fate(String words) {
            this.words = words;
        }

        /** For people. */
        public String words() {
            return words;
        }
    }

    public SentFrame {
        touched = List.copyOf(touched);
        misheard = List.copyOf(misheard);
        overrun = List.copyOf(overrun);
    }

    /** Whether another transmission touched it. */
    public boolean clashed() {
        return !touched.isEmpty();
    }

    /** Whether somebody lost it. */
    public boolean lost() {
        return !misheard.isEmpty() || !overrun.isEmpty();
    }

    /** Driver on to first start bit, negative if it came late; call only where it is known. */
    public long leadNanos() {
        return startNanos - driverOnNanos;
    }

    /** Last stop bit to driver off, negative if it came early; call only where it is known. */
    public long tailNanos() {
        return driverOffNanos - endNanos;
    }
}
