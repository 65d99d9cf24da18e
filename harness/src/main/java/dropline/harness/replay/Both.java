package dropline.harness.replay;

import dropline.bus.trace.TraceSink;

/** Hands every event to one sink, then to another. */
public final class Both implements TraceSink {
    private final TraceSink first;
    private final TraceSink second;

    public Both(TraceSink first, TraceSink second) {
        this.first = first;
        this.second = second;
    }

    @Override
    public void stateChanged(long atNanos, int signal, int serial, long value) {
        first.stateChanged(atNanos, signal, serial, value);
        second.stateChanged(atNanos, signal, serial, value);
    }

    @Override
    public void stateSent(long atNanos) {
        first.stateSent(atNanos);
        second.stateSent(atNanos);
    }

    @Override
    public void queued(long atNanos, int destination, int signal, int serial) {
        first.queued(atNanos, destination, signal, serial);
        second.queued(atNanos, destination, signal, serial);
    }

    @Override
    public void coalesced(long atNanos, int destination, int signal, int serial) {
        first.coalesced(atNanos, destination, signal, serial);
        second.coalesced(atNanos, destination, signal, serial);
    }

    @Override
    public void frameStarted(long atNanos, int talker, int frame, int node, int transaction, int chars) {
        first.frameStarted(atNanos, talker, frame, node, transaction, chars);
        second.frameStarted(atNanos, talker, frame, node, transaction, chars);
    }

    @Override
    public void carried(long atNanos, int destination, int signal, int serial, int transaction) {
        first.carried(atNanos, destination, signal, serial, transaction);
        second.carried(atNanos, destination, signal, serial, transaction);
    }

    @Override
    public void frameEnded(long atNanos, int talker, int frame, int node, int transaction) {
        first.frameEnded(atNanos, talker, frame, node, transaction);
        second.frameEnded(atNanos, talker, frame, node, transaction);
    }

    @Override
    public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
        first.answered(atNanos, node, transaction, attempt, gapNanos);
        second.answered(atNanos, node, transaction, attempt, gapNanos);
    }

    @Override
    public void timedOut(long atNanos, int node, int transaction, int attempt) {
        first.timedOut(atNanos, node, transaction, attempt);
        second.timedOut(atNanos, node, transaction, attempt);
    }

    @Override
    public void gaveUp(long atNanos, int node, int transaction) {
        first.gaveUp(atNanos, node, transaction);
        second.gaveUp(atNanos, node, transaction);
    }

    @Override
    public void backedOff(long atNanos, int node, long untilNanos) {
        first.backedOff(atNanos, node, untilNanos);
        second.backedOff(atNanos, node, untilNanos);
    }

    @Override
    public void cycleStarted(long atNanos, int cycle) {
        first.cycleStarted(atNanos, cycle);
        second.cycleStarted(atNanos, cycle);
    }

    @Override
    public void nodeStatus(
            long atNanos, int node, int boots, int receiveErrors, long longestLoopNanos, long refreshes) {
        first.nodeStatus(atNanos, node, boots, receiveErrors, longestLoopNanos, refreshes);
        second.nodeStatus(atNanos, node, boots, receiveErrors, longestLoopNanos, refreshes);
    }

    @Override
    public void told(long atNanos, int control, int serial) {
        first.told(atNanos, control, serial);
        second.told(atNanos, control, serial);
    }

    @Override
    public void driverOn(long atNanos, int talker) {
        first.driverOn(atNanos, talker);
        second.driverOn(atNanos, talker);
    }

    @Override
    public void driverOff(long atNanos, int talker) {
        first.driverOff(atNanos, talker);
        second.driverOff(atNanos, talker);
    }

    @Override
    public void clash(long atNanos, int talker, int other) {
        first.clash(atNanos, talker, other);
        second.clash(atNanos, talker, other);
    }

    @Override
    public void receivedWrong(long atNanos, int receiver, int talker, int transaction) {
        first.receivedWrong(atNanos, receiver, talker, transaction);
        second.receivedWrong(atNanos, receiver, talker, transaction);
    }

    @Override
    public void phantom(long atNanos, int receiver, int chars) {
        first.phantom(atNanos, receiver, chars);
        second.phantom(atNanos, receiver, chars);
    }

    @Override
    public void reset(long atNanos, int node, long readyNanos) {
        first.reset(atNanos, node, readyNanos);
        second.reset(atNanos, node, readyNanos);
    }

    @Override
    public void overrun(long atNanos, int node, int transaction) {
        first.overrun(atNanos, node, transaction);
        second.overrun(atNanos, node, transaction);
    }

    @Override
    public void applied(long atNanos, int slot, int serial, long heardNanos) {
        first.applied(atNanos, slot, serial, heardNanos);
        second.applied(atNanos, slot, serial, heardNanos);
    }

    @Override
    public void shown(long atNanos, int slot, int serial) {
        first.shown(atNanos, slot, serial);
        second.shown(atNanos, slot, serial);
    }

    @Override
    public void moved(long atNanos, int slot, long from, long untilNanos, long to) {
        first.moved(atNanos, slot, from, untilNanos, to);
        second.moved(atNanos, slot, from, untilNanos, to);
    }

    @Override
    public void controlMoved(long atNanos, int control, int serial, int value) {
        first.controlMoved(atNanos, control, serial, value);
        second.controlMoved(atNanos, control, serial, value);
    }

    @Override
    public void sampled(long atNanos, int control, int serial) {
        first.sampled(atNanos, control, serial);
        second.sampled(atNanos, control, serial);
    }

    @Override
    public void ended(long atNanos) {
        first.ended(atNanos);
        second.ended(atNanos);
    }
}
