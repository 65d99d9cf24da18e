package dropline.harness.verdict;

/**
 * One control.
 *
 * @param control its name
 * @param kind what it is, in small letters: {@code toggle}
 * @param panel the panel it is on
 * @param segment the name of its segment
 * @param node the name of its node
 * @param moves times a person moved it
 * @param controlLatency from the oldest move the host did not know to the host being told it or a newer one
 * @param atWorst what no control latency of it exceeds while nothing is broken and it is moved no faster than believed
 * @param lostSteps moves that the node never saw, or of which the host was never told
 * @param spurious changes that the node believed though nobody had made them
 * @param budgetNanos slowest control latency allowed, ns
 * @param budgetSource where the limit comes from
 * @param verdict on its longest control latency against the budget
 */
public record ControlResult(
        String control,
        String kind,
        String panel,
        String segment,
        String node,
        long moves,
        Latency controlLatency,
        AtWorst atWorst,
        long lostSteps,
        long spurious,
        long budgetNanos,
        String budgetSource,
        Verdict verdict) {}
