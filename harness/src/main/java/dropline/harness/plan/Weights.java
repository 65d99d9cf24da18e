package dropline.harness.plan;

import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.pit.Panel;
import dropline.harness.plan.Settings.Polling;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** How often each board is polled in a cycle: where its limit is so many times tighter, so many times as often. */
final class Weights {
    private static final int MOST = 16;
    private static final long NONE = Long.MAX_VALUE;

    private Weights() {}

    /** By board number; only those that are polled otherwise than is written. */
    static Map<Integer, Integer> of(List<Board> boards, Settings settings) {
        Map<Integer, Integer> weights = new LinkedHashMap<>();
        if (settings.polling() == Polling.AS_WRITTEN) {
            return weights;
        }
        long widest = 0;
        for (Board board : boards) {
            long limit = limitNanos(board, settings.state());
            widest = limit == NONE ? widest : Math.max(widest, limit);
        }
        for (Board board : boards) {
            long limit = limitNanos(board, settings.state());
            long weight = limit == NONE ? 1 : Math.round((double) widest / limit);
            weights.put(board.number(), (int) Math.max(1, Math.min(MOST, weight)));
        }
        return weights;
    }

    /** The tightest limit that hangs on its being polled, ns. */
    private static long limitNanos(Board board, StateDelivery state) {
        long tightest = NONE;
        for (Panel panel : board.node().panels()) {
            if (!panel.controls().isEmpty()) {
                tightest = Math.min(tightest, panel.budget().controlNanos());
            }
            if (state == StateDelivery.ADDRESSED && !panel.indicators().isEmpty()) {
                tightest = Math.min(tightest, panel.budget().updateNanos());
            }
        }
        return tightest;
    }
}
