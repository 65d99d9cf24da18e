package dropline.bus.pit;

/**
 * How the one party that polls a segment behaves.
 *
 * @param kind a hub board with its own clockwork, or the host through its adapter
 * @param adapter the USB stage: a hub pays it for state and for controls, a host on every turn
 * @param state whether state goes to all nodes at once or to each with its poll
 * @param timeOutNanos end of the request to the end of the reply, ns; a reply that ends at it is in time
 * @param retries further tries before a transaction is given up, 0..10
 * @param backOffAfter given-up transactions in a row after which a node is polled rarely; 0 for never
 * @param backOffNanos how long it is then left alone, ns
 * @param gapNanos from the end of a transaction or broadcast to the next frame, ns
 * @param turnaroundNanos silence after a broadcast so that nodes can act (Modbus), ns
 * @param refreshNanos period in which every value is sent again though unchanged, ns; 0 for never
 * @param enableLeadNanos driver on to first start bit, ns
 * @param releaseTailNanos last stop bit to driver off, ns
 */
public record Controller(
        Kind kind,
        Adapter adapter,
        StateDelivery state,
        long timeOutNanos,
        int retries,
        int backOffAfter,
        long backOffNanos,
        long gapNanos,
        long turnaroundNanos,
        long refreshNanos,
        long enableLeadNanos,
        long releaseTailNanos) {

    /** Who polls. */
    public enum Kind {
        HUB,
        HOST
    }

    /** How state reaches nodes. */
    public enum StateDelivery {
        BROADCAST,
        ADDRESSED
    }

    public Controller {
        if (timeOutNanos <= 0) {
            throw new IllegalArgumentException("time-out must be above 0: timeOutNanos=" + timeOutNanos);
        }
        if (retries < 0 || retries > 10 || backOffAfter < 0) {
            throw new IllegalArgumentException(
                    "retries must be 0..10, back-off not negative: retries=" + retries + " after=" + backOffAfter);
        }
        if (backOffNanos < 0 || gapNanos < 0 || turnaroundNanos < 0 || refreshNanos < 0) {
            throw new IllegalArgumentException("times must not be negative: backOff=" + backOffNanos + " gap="
                    + gapNanos + " turnaround=" + turnaroundNanos + " refresh=" + refreshNanos);
        }
        if (enableLeadNanos < 0 || releaseTailNanos < 0) {
            throw new IllegalArgumentException(
                    "times must not be negative: lead=" + enableLeadNanos + " tail=" + releaseTailNanos);
        }
    }

    /** The same with another time-out, ns. */
    public Controller withTimeOut(long nanos) {
        return new Controller(
                kind,
                adapter,
                state,
                nanos,
                retries,
                backOffAfter,
                backOffNanos,
                gapNanos,
                turnaroundNanos,
                refreshNanos,
                enableLeadNanos,
                releaseTailNanos);
    }

    /** The same, by which state goes otherwise. */
    public Controller with(StateDelivery other) {
        return new Controller(
                kind,
                adapter,
                other,
                timeOutNanos,
                retries,
                backOffAfter,
                backOffNanos,
                gapNanos,
                turnaroundNanos,
                refreshNanos,
                enableLeadNanos,
                releaseTailNanos);
    }

    /** The same behind another USB stage. */
    public Controller with(Adapter other) {
        return new Controller(
                kind,
                other,
                state,
                timeOutNanos,
                retries,
                backOffAfter,
                backOffNanos,
                gapNanos,
                turnaroundNanos,
                refreshNanos,
                enableLeadNanos,
                releaseTailNanos);
    }

    /** The same as its program sees it: what its adapter and its driver add is not counted. */
    public Controller bare() {
        return new Controller(
                kind,
                Adapter.NONE,
                state,
                timeOutNanos,
                retries,
                backOffAfter,
                backOffNanos,
                gapNanos,
                turnaroundNanos,
                refreshNanos,
                0,
                0);
    }
}
