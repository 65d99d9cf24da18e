package dropline.harness.finding;

import dropline.bus.trace.TraceSink;

/**
 * Lets through what a real controller knows: the host's state, its own frames, the replies it took, what they said. The
 * wire, the nodes' frames that it did not take, and everything inside nodes and panels stay behind.
 */
final class ControllerOnly implements TraceSink {
    private final TraceSink behind;

    ControllerOnly(TraceSink behind) {
        this.behind = behind;
    }

    @Override
    public void stateChanged(long atNanos, int signal, int serial, long value) {
        behind.stateChanged(atNanos, signal, serial, value);
    }

    @Override
    public void stateSent(long atNanos) {
        behind.stateSent(atNanos);
    }

    @Override
    public void queued(long atNanos, int destination, int signal, int serial) {
        behind.queued(atNanos, destination, signal, serial);
    }

    @Override
    public void coalesced(long atNanos, int destination, int signal, int serial) {
        behind.coalesced(atNanos, destination, signal, serial);
    }

    @Override
    public void frameStarted(long atNanos, int talker, int frame, int node, int transaction, int chars) {
        if (talker == CONTROLLER) {
            behind.frameStarted(atNanos, talker, frame, node, transaction, chars);
        }
    }

    @Override
    public void carried(long atNanos, int destination, int signal, int serial, int transaction) {
        behind.carried(atNanos, destination, signal, serial, transaction);
    }

    @Override
    public void frameEnded(long atNanos, int talker, int frame, int node, int transaction) {
        if (talker == CONTROLLER) {
            behind.frameEnded(atNanos, talker, frame, node, transaction);
        }
    }

    @Override
    public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
        behind.answered(atNanos, node, transaction, attempt, gapNanos);
    }

    @Override
    public void timedOut(long atNanos, int node, int transaction, int attempt) {
        behind.timedOut(atNanos, node, transaction, attempt);
    }

    @Override
    public void gaveUp(long atNanos, int node, int transaction) {
        behind.gaveUp(atNanos, node, transaction);
    }

    @Override
    public void backedOff(long atNanos, int node, long untilNanos) {
        behind.backedOff(atNanos, node, untilNanos);
    }

    @Override
    public void cycleStarted(long atNanos, int cycle) {
        behind.cycleStarted(atNanos, cycle);
    }

    @Override
    public void nodeStatus(
            long atNanos, int node, int boots, int receiveErrors, long longestLoopNanos, long refreshes) {
        behind.nodeStatus(atNanos, node, boots, receiveErrors, longestLoopNanos, refreshes);
    }

    @Override
    public void told(long atNanos, int control, int serial) {
        behind.told(atNanos, control, serial);
    }

    @Override
    public void ended(long atNanos) {
        behind.ended(atNanos);
    }
}
