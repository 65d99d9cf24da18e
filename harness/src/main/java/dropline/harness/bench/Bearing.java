package dropline.harness.bench;

import dropline.bus.fault.FaultKind;
import dropline.harness.live.Asking;
import dropline.harness.verdict.Words;
import java.io.IOException;
import java.util.OptionalLong;

/** Whether it bears a controller whose rate is a little off, and comes back from a restart. */
final class Bearing {
    /** MODBUS over serial line V1.02, section 3.2: a device must accept an error of 2 % in reception. */
    private static final int MUST_BEAR_PERMILLE = 20;

    private static final int MOST_PERMILLE = 60;
    private static final int STEP_PERMILLE = 5;

    /** It must be back by then. */
    private static final long BACK_NANOS = 10_000_000_000L;

    private final Bench bench;

    Bearing(Bench bench) {
        this.bench = bench;
    }

    void rates() throws IOException {
        int slow = farthest(-1);
        int fast = slow < 0 ? slow : farthest(1);
        if (!bench.link().tune(bench.segment().baud()) || slow < 0 || fast < 0) {
            bench.undecided(
                    "off-rate",
                    "the rate cannot be set off over " + bench.link().where());
            return;
        }
        bench.asking().rest(bench.restNanos());
        bench.item(
                "off-rate",
                slow >= MUST_BEAR_PERMILLE && fast >= MUST_BEAR_PERMILLE,
                "answers with the rate off by " + percent(-slow) + " to " + percent(fast)
                        + (Math.max(slow, fast) == MOST_PERMILLE ? " (more was not tried)" : "") + "; it must bear "
                        + MUST_BEAR_PERMILLE / 10 + "% either way",
                2 * MOST_PERMILLE / STEP_PERMILLE * bench.thoroughness().probes,
                FaultKind.CLOCK_OFF,
                FaultKind.WRONG_BAUD);
    }

    /** How far off it still answers every time, in parts in a thousand; -1 where the link cannot be set off. */
    private int farthest(int sign) throws IOException {
        int far = 0;
        for (int off = STEP_PERMILLE; off <= MOST_PERMILLE; off += STEP_PERMILLE) {
            long baud = Math.round(bench.segment().baud() * (1 + sign * off / 1000.0));
            if (!bench.link().tune((int) baud)) {
                return -1;
            }
            for (int i = 0; i < bench.thoroughness().probes; i++) {
                Asking.Outcome outcome = bench.asking().poll(bench.subject().wire(), bench.timeOut());
                bench.asking().rest(bench.restNanos());
                if (!bench.isAnswered(outcome)) {
                    return far;
                }
            }
            far = off;
        }
        return far;
    }

    private static String percent(int permille) {
        return (permille > 0 ? "+" : permille < 0 ? "-" : "") + Math.abs(permille) / 10.0 + "%";
    }

    /** How long it takes to be back after a restart, ns; empty where it was not restarted. */
    OptionalLong restart() throws IOException {
        int before = boots();
        long begun = bench.link().now();
        if (!bench.link().restart()) {
            bench.undecided(
                    "comes-back", "it cannot be restarted over " + bench.link().where());
            return OptionalLong.empty();
        }
        int missed = 0;
        long back = -1;
        while (back < 0 && bench.link().now() - begun < BACK_NANOS) {
            Asking.Came reply = bench.poll().replyOf(bench.address());
            missed += reply == null ? 1 : 0;
            back = reply == null ? -1 : reply.startNanos() - begun;
        }
        if (back >= 0 && missed == 0 && boots() == before) {
            bench.undecided("comes-back", "it did not restart: the adapter's DTR does not lead to it");
            return OptionalLong.empty();
        }
        int lost = 0;
        for (int i = 0; back >= 0 && i < bench.thoroughness().gaps; i++) {
            lost += bench.isAnswered(bench.poll()) ? 0 : 1;
        }
        int restarts = boots() - before & 0xFF;
        boolean counted = before < 0 || restarts == 1;
        String says = back < 0
                ? "was not back " + Words.time(BACK_NANOS) + " after a restart"
                : "was back " + Words.time(back) + " after a restart, then missed " + lost + " of "
                        + bench.thoroughness().gaps + " polls"
                        + (counted ? "" : "; it counts " + restarts + " restarts");
        bench.item(
                "comes-back",
                back >= 0 && lost == 0 && counted,
                says,
                1 + bench.thoroughness().gaps,
                FaultKind.RESET,
                FaultKind.BROWN_OUT,
                FaultKind.LOOP_STALL,
                FaultKind.BLACKOUT);
        return back < 0 ? OptionalLong.empty() : OptionalLong.of(back);
    }

    private int boots() {
        int known = bench.statuses().size();
        return known == 0 ? -1 : bench.statuses().get(known - 1).bootCount();
    }
}
