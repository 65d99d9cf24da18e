package dropline.bus.pit;

/**
 * The limits a panel is judged against.
 *
 * @param updateNanos slowest update latency, ns
 * @param controlNanos slowest control latency, ns
 * @param source where the limits come from, for people
 */
public record Budget(long updateNanos, long controlNanos, String source) {
    public Budget {
        if (updateNanos <= 0 || controlNanos <= 0) {
            throw new IllegalArgumentException(
                    "budgets must be above 0: updateNanos=" + updateNanos + " controlNanos=" + controlNanos);
        }
    }
}
