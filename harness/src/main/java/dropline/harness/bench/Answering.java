package dropline.harness.bench;

import dropline.bus.fault.FaultKind;
import dropline.harness.live.Asking;
import dropline.harness.verdict.Words;
import dropline.protocol.Bytes;
import dropline.protocol.FirmwareVersion;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** Whether it answers, and how soon. */
final class Answering {
    private static final int FIRST_POLLS = 20;
    private static final long BOOT_NANOS = 3_000_000_000L;

    /** Share of the time-out that an answer may take. */
    private static final double MOST_OF_TIME_OUT = 0.8;

    private static final long[] PAUSES_NANOS = {
        1_000_000L, 2_000_000L, 5_000_000L, 10_000_000L, 20_000_000L, 50_000_000L, 100_000_000L
    };

    private final Bench bench;

    Answering(Bench bench) {
        this.bench = bench;
    }

    boolean answers() throws IOException {
        int answered = 0;
        int bytes = 0;
        long until = bench.link().now() + BOOT_NANOS;
        while (bench.link().now() < until && answered == 0) {
            answered = bench.isAnswered(bench.poll()) ? 1 : 0;
        }
        answered = 0;
        for (int i = 0; i < FIRST_POLLS; i++) {
            Asking.Outcome outcome = bench.poll();
            answered += bench.isAnswered(outcome) ? 1 : 0;
            bytes += bench.isAnswered(outcome) ? 0 : outcome.bytes();
        }
        String says = "answers " + answered + " of " + FIRST_POLLS + " polls"
                + (bytes > 0 ? "; something comes back that is no sound reply" : "");
        if (bytes > 0) {
            bench.item(
                    "answers",
                    answered == FIRST_POLLS,
                    says,
                    FIRST_POLLS,
                    FaultKind.DRIVER_ENABLED_LATE,
                    FaultKind.DRIVER_RELEASED_EARLY,
                    FaultKind.WRONG_BAUD,
                    FaultKind.CLOCK_OFF,
                    FaultKind.BABBLING_NODE,
                    FaultKind.STUCK_DRIVER,
                    FaultKind.REPLY_TOO_SOON,
                    FaultKind.DUPLICATE_ADDRESS);
        } else {
            bench.item(
                    "answers",
                    answered == FIRST_POLLS,
                    says,
                    FIRST_POLLS,
                    FaultKind.DEAD_NODE,
                    FaultKind.DRIVER_ENABLED_LATE,
                    FaultKind.DRIVER_RELEASED_EARLY,
                    FaultKind.WRONG_BAUD,
                    FaultKind.CLOCK_OFF,
                    FaultKind.SWAPPED_PAIR,
                    FaultKind.DUPLICATE_ADDRESS,
                    FaultKind.LOOP_STALL,
                    FaultKind.BLACKOUT,
                    FaultKind.RESET,
                    FaultKind.EAVESDROPPER,
                    FaultKind.FLOATING_RECEIVER,
                    FaultKind.COMMON_WIRE_LIFTED);
        }
        return answered > 0;
    }

    /** Which firmware it runs; null where it does not say. What nobody can ask or expect is no item. */
    @Nullable
    FirmwareVersion identity() throws IOException {
        FirmwareVersion measured = bench.subject().wire().firmware();
        boolean canBeAsked = bench.segment().protocol().askFirmware(bench.address()) != null;
        if (!canBeAsked || (bench.link().isModelled() && measured == null)) {
            return null;
        }
        FirmwareVersion said = bench.asking().firmware(bench.address(), bench.timeOut());
        if (said == null) {
            bench.undecided("identity", "it does not say which firmware it runs");
        } else if (measured != null && !measured.equals(said)) {
            bench.item(
                    "identity",
                    false,
                    "runs firmware " + said + ", and the pit file has the timing of " + measured
                            + ": this examination is of another firmware; take its passport",
                    1);
        } else {
            bench.item("identity", true, "runs firmware " + said, 1);
        }
        return said;
    }

    Gaps gaps() throws IOException {
        Gaps gaps = new Gaps();
        int missed = 0;
        for (int i = 0; i < bench.thoroughness().gaps; i++) {
            Asking.Outcome outcome = bench.poll();
            Asking.Came reply = outcome.replyOf(bench.address());
            if (reply == null) {
                missed++;
            } else {
                gaps.add(reply.startNanos() - outcome.saidUntilNanos(), reply.endNanos() - outcome.saidUntilNanos());
            }
        }
        long limit = Math.round(bench.segment().controller().timeOutNanos() * MOST_OF_TIME_OUT);
        String says = "its answer was there after " + Words.time(gaps.slowest()) + " at most, reply gaps "
                + gaps.words() + (missed == 0 ? "" : "; " + missed + " polls were not answered");
        bench.timed(
                "answer-in-time",
                missed > 0 ? Math.max(gaps.slowest(), limit + bench.floorNanos() + 1) : gaps.slowest(),
                limit,
                false,
                says,
                bench.thoroughness().gaps,
                FaultKind.LOOP_STALL,
                FaultKind.BLACKOUT,
                FaultKind.RESET,
                FaultKind.DRIVER_ENABLED_LATE,
                FaultKind.DRIVER_RELEASED_EARLY,
                FaultKind.CLOCK_OFF);
        long least = Math.max(
                bench.segment().controller().releaseTailNanos(), bench.segment().silenceNanos());
        bench.timed(
                "not-too-soon",
                gaps.least(),
                least,
                true,
                "its soonest reply began " + Words.time(Math.max(0, gaps.least()))
                        + " after the request; the controller's driver may be on for "
                        + Words.time(least),
                gaps.count(),
                FaultKind.REPLY_TOO_SOON);
        return gaps;
    }

    /** Polls after ever longer pauses, so that its loop is met at whatever it does. */
    void pauses() throws IOException {
        int missed = 0;
        int trials = 0;
        long slowest = 0;
        for (long pause : PAUSES_NANOS) {
            for (int i = 0; i < bench.thoroughness().probes; i++) {
                // never in step with anything that comes round regularly
                bench.asking().rest(pause + i * pause / (bench.thoroughness().probes + 1));
                Asking.Outcome outcome = bench.poll();
                Asking.Came reply = outcome.replyOf(bench.address());
                slowest = reply == null ? slowest : Math.max(slowest, reply.endNanos() - outcome.saidUntilNanos());
                missed += reply == null ? 1 : 0;
                trials++;
            }
        }
        bench.item(
                "after-pauses",
                missed == 0,
                "misses " + missed + " of " + trials + " polls that come after pauses of "
                        + Words.time(PAUSES_NANOS[0]) + " to "
                        + Words.time(2 * PAUSES_NANOS[PAUSES_NANOS.length - 1])
                        + "; its slowest answer was there after " + Words.time(slowest),
                trials,
                FaultKind.LOOP_STALL,
                FaultKind.BLACKOUT,
                FaultKind.RESET,
                FaultKind.DRIVER_ENABLED_LATE,
                FaultKind.DRIVER_RELEASED_EARLY,
                FaultKind.CLOCK_OFF);
    }

    /** Requests of every length it may get, from a plain poll to the longest. */
    void lengths() throws IOException {
        int lost = 0;
        int trials = 0;
        int longest = 0;
        for (Bytes request : Probe.ofEveryLength(bench.subject())) {
            longest = Math.max(longest, request.length());
            for (int i = 0; i < bench.thoroughness().probes; i++) {
                boolean isAnswered = bench.isAnswered(bench.asking().say(request, bench.address(), bench.timeOut()));
                lost += isAnswered ? 0 : 1;
                trials++;
                bench.asking().rest(bench.restNanos());
            }
        }
        bench.item(
                "every-length",
                lost == 0,
                "misses " + lost + " of " + trials + " requests, the longest " + longest + " characters long",
                trials,
                FaultKind.RING_OVERRUN,
                FaultKind.BLACKOUT,
                FaultKind.LOOP_STALL,
                FaultKind.CLOCK_OFF);
    }
}
