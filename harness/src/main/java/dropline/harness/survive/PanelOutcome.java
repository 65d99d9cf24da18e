package dropline.harness.survive;

/**
 * What became of one panel under one fault.
 *
 * @param panel its name
 * @param node the name of its node
 * @param state what it came to
 * @param worstUpdateNanos longest update latency from when the fault struck, ns; what waits at the end included
 * @param worstControlNanos longest control latency likewise, ns
 * @param recoveryNanos from when the fault was over until its last late change was shown, ns; 0 where none was after
 *     that, and where it never recovers
 * @param lack what is still wrong with it at the end, in words; empty for nothing
 * @param stoodWrong whether one of its needles stood in the wrong place
 * @param lostSteps steps of its controls that got lost, beyond those that get lost without the fault
 * @param spurious moves of its controls that nobody made
 */
public record PanelOutcome(
        String panel,
        String node,
        State state,
        long worstUpdateNanos,
        long worstControlNanos,
        long recoveryNanos,
        String lack,
        boolean stoodWrong,
        long lostSteps,
        long spurious) {

    /** What a panel came to. */
    public enum State {
        /** Everything within its limits. */
        UNTOUCHED,
        /** Something was late, wrong or lost, and then all was well again. */
        RECOVERED,
        /** Something was still late, forgotten or wrong at the end. */
        NEVER
    }

    /** The longer of its two latencies, ns. */
    public long worstNanos() {
        return Math.max(worstUpdateNanos, worstControlNanos);
    }
}
