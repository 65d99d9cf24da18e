package dropline.harness.bench;

import dropline.bus.fault.FaultKind;
import dropline.harness.live.Asking;
import dropline.protocol.NodeStatus;
import java.io.IOException;
import java.util.function.DoubleConsumer;

/** Whether it goes on for long. */
final class Lasting {
    /** So many polls without a reply in a row, and nobody is there any more. */
    private static final int GONE = 50;

    private final Bench bench;

    Lasting(Bench bench) {
        this.bench = bench;
    }

    void soak(Telling telling, DoubleConsumer progress) throws IOException {
        int lost = 0;
        int garbled = 0;
        int inARow = 0;
        int asked = 0;
        while (asked < bench.thoroughness().soak && inARow < GONE) {
            Asking.Outcome outcome = bench.poll();
            Asking.Came reply = outcome.replyOf(bench.address());
            inARow = reply == null ? inARow + 1 : 0;
            if (reply == null) {
                lost++;
                garbled += outcome.bytes() > 0 ? 1 : 0;
            } else if (!bench.link().isModelled()) {
                telling.hear(reply);
            }
            if (asked++ % 100 == 0) {
                progress.accept(0.6 + 0.4 * asked / bench.thoroughness().soak);
            }
        }
        bench.item(
                "soak",
                lost == 0,
                "misses " + lost + " of " + asked + " polls"
                        + (inARow == GONE ? ", all of the last " + GONE + ": it has fallen silent" : "")
                        + (garbled > 0 ? ", " + garbled + " of them with a reply that was not sound" : ""),
                asked,
                FaultKind.RESET,
                FaultKind.LOOP_STALL,
                FaultKind.BLACKOUT,
                FaultKind.BABBLING_NODE,
                FaultKind.DRIVER_ENABLED_LATE,
                FaultKind.DRIVER_RELEASED_EARLY,
                FaultKind.CLOCK_OFF,
                FaultKind.COMMON_WIRE_LIFTED,
                FaultKind.NOISE_BURST);
    }

    void status() {
        if (bench.statuses().isEmpty()) {
            bench.undecided("stays-up", "replies of this protocol do not say how their board fares");
            return;
        }
        NodeStatus first = bench.statuses().get(0);
        NodeStatus last = bench.statuses().get(bench.statuses().size() - 1);
        int restarts = last.bootCount() - first.bootCount() & 0xFF;
        bench.item(
                "stays-up",
                restarts == 0,
                restarts == 0 ? "did not restart" : "restarted " + restarts + " times while it was examined",
                bench.statuses().size(),
                FaultKind.RESET,
                FaultKind.BROWN_OUT);
        boolean refreshes = bench.subject().described().panels().stream()
                .flatMap(panel -> panel.indicators().stream())
                .anyMatch(indicator -> indicator.kind().refreshes());
        if (refreshes) {
            boolean moves = last.refreshes()
                            != bench.statuses().get(bench.statuses().size() / 2).refreshes()
                    || last.refreshes() != first.refreshes();
            bench.item(
                    "display-runs",
                    moves,
                    moves ? "its display is refreshed" : "its count of display refreshes stands still",
                    bench.statuses().size(),
                    FaultKind.FROZEN_DISPLAY);
        }
    }
}
