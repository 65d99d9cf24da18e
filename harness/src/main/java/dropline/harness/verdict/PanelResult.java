package dropline.harness.verdict;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One panel.
 *
 * @param panel its name
 * @param place where it is mounted; may be empty
 * @param segment the name of its segment
 * @param node the name of its node
 * @param status built, bench or planned, in small letters
 * @param budgetNanos slowest update latency allowed, ns
 * @param budgetSource where the limit comes from
 * @param verdict on its longest update latency against the budget
 * @param updateLatency over all its signals
 * @param atWorst what no update latency of it exceeds while nothing is broken
 * @param meanStages where the time went, on average over all its changes
 * @param worst its slowest update; null when it had none
 * @param histogram its update latencies, for drawing; no buckets when it had none
 * @param recoveryNanos longest time from a restart of its node until it showed again all that it had shown, ns
 * @param staleNanos how long at the end it had not done so since a restart, ns; 0 if it had
 * @param signals one for each signal on each indicator, in the order of the pit file
 */
public record PanelResult(
        String panel,
        String place,
        String segment,
        String node,
        String status,
        long budgetNanos,
        String budgetSource,
        Verdict verdict,
        Latency updateLatency,
        AtWorst atWorst,
        Stages meanStages,
        @Nullable WorstMoment worst,
        LatencyHistogram histogram,
        long recoveryNanos,
        long staleNanos,
        List<SignalResult> signals) {
    public PanelResult {
        signals = List.copyOf(signals);
    }
}
