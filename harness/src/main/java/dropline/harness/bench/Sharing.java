package dropline.harness.bench;

import dropline.bus.clock.UartClock;
import dropline.bus.fault.FaultKind;
import dropline.harness.live.Asking;
import dropline.harness.verdict.Words;
import dropline.protocol.Bytes;
import dropline.protocol.NodeWire;
import java.io.IOException;
import java.util.List;
import java.util.OptionalLong;

/** Whether it gets on with others on its pair. */
final class Sharing {
    private final Bench bench;

    Sharing(Bench bench) {
        this.bench = bench;
    }

    void bursts() throws IOException {
        int held = -1;
        int failed = -1;
        int[] lengths = {1, 2, 4, 8, 16, 32};
        for (int frames : lengths) {
            Bytes burst = Probe.burst(bench.asking(), bench.subject(), frames);
            boolean well = true;
            for (int i = 0; i < bench.thoroughness().probes; i++) {
                well &= bench.isAnswered(bench.asking().say(burst, bench.address(), bench.timeOut()));
                bench.asking().rest(bench.restNanos());
            }
            if (well && failed < 0) {
                held = burst.length();
            } else if (failed < 0) {
                failed = burst.length();
            }
        }
        boolean separate = bench.segment().silenceNanos() > 0;
        if (separate) {
            bench.undecided("back-to-back", "frames of this protocol never come without a silence between them");
            return;
        }
        bench.item(
                "back-to-back",
                failed < 0,
                failed < 0
                        ? "answers a poll that follows " + held + " characters for others without a pause"
                        : "misses a poll at the end of " + failed + " characters without a pause",
                lengths.length * bench.thoroughness().probes,
                FaultKind.RING_OVERRUN,
                FaultKind.LOOP_STALL,
                FaultKind.BLACKOUT,
                FaultKind.EAVESDROPPER);
    }

    /** The least gap after its reply at which the next poll is answered: its driver is off by then. */
    OptionalLong releaseTail() throws IOException {
        if (!bench.link().isExact()) {
            bench.undecided(
                    "lets-go",
                    "where a start bit falls cannot be chosen over "
                            + bench.link().where());
            return OptionalLong.empty();
        }
        long half = UartClock.exact(bench.segment().baud()).halfBitsNanos(1) + 1;
        long low = 0;
        long high = Math.max(20_000_000L, 4 * bench.segment().controller().gapNanos());
        if (!isHeardAfter(high)) {
            bench.item(
                    "lets-go",
                    false,
                    "a poll that comes " + Words.time(high) + " after its reply is lost",
                    bench.thoroughness().probes,
                    FaultKind.DRIVER_RELEASED_LATE,
                    FaultKind.FLOATING_RECEIVER);
            return OptionalLong.empty();
        }
        while (high - low > 500) {
            long middle = (low + high) / 2;
            if (isHeardAfter(middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        long limit = Math.max(
                bench.segment().controller().gapNanos()
                        + bench.segment().controller().enableLeadNanos(),
                bench.segment().silenceNanos());
        bench.timed(
                "lets-go",
                Math.max(0, high - half),
                limit,
                false,
                "polls are heard from " + Words.time(Math.max(0, high - half))
                        + " after its reply on; the controller begins after "
                        + Words.time(limit),
                bench.thoroughness().probes,
                FaultKind.DRIVER_RELEASED_LATE,
                FaultKind.FLOATING_RECEIVER);
        return OptionalLong.of(Math.max(0, high - half));
    }

    private boolean isHeardAfter(long nanos) throws IOException {
        int heard = 0;
        for (int i = 0; i < bench.thoroughness().probes; i++) {
            Asking.Outcome first = bench.asking().poll(bench.subject().wire(), bench.timeOut());
            bench.asking().rest(nanos);
            heard += bench.isAnswered(first)
                            && bench.isAnswered(
                                    bench.asking().poll(bench.subject().wire(), bench.timeOut()))
                    ? 1
                    : 0;
            bench.asking().rest(Math.max(bench.restNanos(), 5_000_000));
        }
        return heard * 10 >= bench.thoroughness().probes * 9;
    }

    /** A round of the segment's polls, the others' replies played. */
    void amongOthers() throws IOException {
        List<NodeWire> others = bench.subject().others();
        if (others.isEmpty()) {
            bench.undecided("among-others", "it has its segment to itself");
            return;
        }
        int lost = 0;
        for (int i = 0; i < bench.thoroughness().probes * 5; i++) {
            NodeWire other = others.get(i % others.size());
            bench.asking().say(bench.asking().pollOf(other), -1, bench.restNanos());
            bench.asking().say(Probe.replyOf(bench.subject(), other), -1, bench.restNanos());
            bench.asking().rest(bench.restNanos());
            lost += bench.isAnswered(bench.poll()) ? 0 : 1;
        }
        bench.item(
                "among-others",
                lost == 0,
                "misses " + lost + " of " + bench.thoroughness().probes * 5 + " polls that come after another's reply",
                bench.thoroughness().probes * 5,
                FaultKind.EAVESDROPPER,
                FaultKind.RING_OVERRUN,
                FaultKind.COMMON_WIRE_LIFTED);
    }
}
