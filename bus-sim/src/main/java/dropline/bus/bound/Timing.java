package dropline.bus.bound;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Adapter;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;

/**
 * What the party that polls takes for each frame on one segment, at most.
 *
 * @param prepareNanos from its being free to the first start bit: its turn on a shared board, its driver, the USB frame
 *     of a host, ns
 * @param jitterNanos by how much that differs from frame to frame, ns
 * @param receiveNanos from a reply's last stop bit to the host having it, ns
 * @param arriveNanos from the host's sending a state to the controller having it, ns
 * @param silenceNanos silence before every frame, ns
 * @param quietNanos from a reply's last stop bit to the next first start bit, at least, ns
 * @param hasMaximum whether the adapter's times have a stated maximum
 */
record Timing(
        Segment segment,
        long prepareNanos,
        long jitterNanos,
        long receiveNanos,
        long arriveNanos,
        long silenceNanos,
        long quietNanos,
        boolean hasMaximum) {

    static Timing of(Pit pit, int index) {
        Segment segment = pit.segments().get(index);
        Controller controller = segment.controller();
        Adapter adapter = controller.adapter();
        boolean host = controller.kind() == Controller.Kind.HOST;
        long turn = pit.turnNanos(index);
        long others = pit.runsWith(index).size() - 1L;
        long lead = controller.enableLeadNanos();
        long jitter = others * turn + (host ? adapter.frameNanos() : 0);
        boolean hasMaximum = adapter.wakeUp().longestNanos() != Long.MAX_VALUE;
        long wake = hasMaximum ? adapter.wakeUp().longestNanos() : 0;
        long silence = segment.silenceNanos();
        return new Timing(
                segment,
                turn + lead + jitter,
                jitter,
                adapter.latencyTimerNanos() + spread(pit, index) + adapter.frameNanos() + wake,
                host ? 0 : adapter.frameNanos() + wake,
                silence,
                Math.max(Math.max(controller.gapNanos(), silence), lead) + turn,
                hasMaximum);
    }

    /**
     * By how much the end of a reply on another segment of the same board may lie after its being heard, and with it
     * the last packet of the USB lead they share, beyond this segment's own.
     */
    private static long spread(Pit pit, int index) {
        long own = afterHearing(pit.segments().get(index));
        long most = own;
        for (int other : pit.runsWith(index)) {
            most = Math.max(most, afterHearing(pit.segments().get(other)));
        }
        return most - own;
    }

    /** From a receiver's having a frame of the controller to the frame's end, ns. */
    private static long afterHearing(Segment segment) {
        return UartClock.exact(segment.baud())
                .halfBitsNanos(2L * segment.format().stopBits() - 1);
    }

    long afterHearingNanos() {
        return afterHearing(segment);
    }

    /** So many characters in so many frames, each frame's time rounded up, ns. */
    long chars(long count, long frames) {
        return UartClock.exact(segment.baud()).charsNanos(segment.format(), count) + frames;
    }

    /** A frame of so many characters, ns. */
    long frame(long chars) {
        return chars(chars, 1);
    }

    /** A broadcast, from the controller being free to its being free again, beside its characters, ns. */
    long aroundBroadcastNanos() {
        Controller controller = segment.controller();
        long gap = Math.max(controller.gapNanos(), controller.turnaroundNanos());
        return prepareNanos + after(Math.max(gap, silenceNanos));
    }

    /** From the end of a frame to the controller being free, where the next may begin so long after that end, ns. */
    private long after(long nanos) {
        long lead = segment.controller().enableLeadNanos();
        return Math.max(nanos, segment.controller().releaseTailNanos() + lead) - lead;
    }

    /** A try, beside its request's characters, that is answered so long after its request's end, ns. */
    long answeredNanos(long answerNanos) {
        Controller controller = segment.controller();
        long gap = Math.max(Math.max(controller.gapNanos(), silenceNanos), controller.enableLeadNanos());
        return prepareNanos + answerNanos + gap - controller.enableLeadNanos();
    }

    /** A try, beside its request's characters, that nobody answers, ns. */
    long unansweredNanos() {
        Controller controller = segment.controller();
        long gap = Math.max(controller.gapNanos(), controller.enableLeadNanos());
        return prepareNanos + after(Math.max(controller.timeOutNanos() + gap, silenceNanos));
    }
}
