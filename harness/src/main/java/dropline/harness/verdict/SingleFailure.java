package dropline.harness.verdict;

import java.util.List;

/**
 * The same replay with one node dead.
 *
 * @param node the dead node's name
 * @param segment its segment's name
 * @param outcome of the panels on other nodes; those on the dead node are not judged
 * @param silentPanels panels on the dead node
 * @param pollCycleMeanNanos mean poll cycle of its segment with the node dead, ns
 * @param healthyPollCycleMeanNanos the same with all nodes alive, ns
 * @param panels every panel on another node of its segment, or of one that runs with it, by margin, worst first
 */
public record SingleFailure(
        String node,
        String segment,
        Outcome outcome,
        List<String> silentPanels,
        long pollCycleMeanNanos,
        long healthyPollCycleMeanNanos,
        List<PanelThen> panels) {

    /**
     * A panel while another node is dead.
     *
     * @param panel its name
     * @param verdict then
     * @param healthyVerdict with all nodes alive
     * @param updateLatency then
     */
    public record PanelThen(String panel, Verdict verdict, Verdict healthyVerdict, Latency updateLatency) {}

    public SingleFailure {
        silentPanels = List.copyOf(silentPanels);
        panels = List.copyOf(panels);
    }
}
