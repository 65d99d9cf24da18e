package dropline.harness.finding;

import dropline.bus.trace.TraceSink;

/** Hands a segment's events to the folds they matter to. */
final class Fold implements TraceSink {
    private final WireFold wire;
    private final PartFold parts;
    private final ControllerFold controller;

    Fold(WireFold wire, PartFold parts, ControllerFold controller) {
        this.wire = wire;
        this.parts = parts;
        this.controller = controller;
    }

    @Override
    public void stateChanged(long atNanos, int signal, int serial, long value) {
        parts.stateChanged(signal, serial, value);
        controller.stateChanged(atNanos, signal, serial);
    }

    @Override
    public void stateSent(long atNanos) {
        controller.stateSent(atNanos);
    }

    @Override
    public void queued(long atNanos, int destination, int signal, int serial) {
        controller.queued(atNanos, signal, serial);
    }

    @Override
    public void frameStarted(long atNanos, int talker, int frame, int node, int transaction, int chars) {
        wire.frameStarted(atNanos, talker, frame, node, transaction, chars);
    }

    @Override
    public void carried(long atNanos, int destination, int signal, int serial, int transaction) {
        wire.carried();
        controller.carried(atNanos, signal, serial);
    }

    @Override
    public void frameEnded(long atNanos, int talker, int frame, int node, int transaction) {
        wire.frameEnded(atNanos, talker);
        if (talker == CONTROLLER && frame == REQUEST) {
            controller.requestEnded(atNanos);
        }
    }

    @Override
    public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
        wire.answered(atNanos, node, gapNanos);
        controller.answered(atNanos, node, gapNanos);
    }

    @Override
    public void timedOut(long atNanos, int node, int transaction, int attempt) {
        controller.timedOut(atNanos, node, attempt);
    }

    @Override
    public void gaveUp(long atNanos, int node, int transaction) {
        controller.gaveUp(atNanos, node);
    }

    @Override
    public void nodeStatus(
            long atNanos, int node, int boots, int receiveErrors, long longestLoopNanos, long refreshes) {
        controller.nodeStatus(atNanos, node, boots, receiveErrors, longestLoopNanos);
    }

    @Override
    public void told(long atNanos, int control, int serial) {
        parts.told(atNanos, control, serial);
        controller.told(atNanos, control);
    }

    @Override
    public void driverOn(long atNanos, int talker) {
        wire.driverOn(atNanos, talker);
    }

    @Override
    public void driverOff(long atNanos, int talker) {
        wire.driverOff(atNanos, talker);
    }

    @Override
    public void clash(long atNanos, int talker, int other) {
        wire.clash(atNanos, talker, other);
    }

    @Override
    public void receivedWrong(long atNanos, int receiver, int talker, int transaction) {
        wire.receivedWrong(atNanos, receiver, talker);
    }

    @Override
    public void phantom(long atNanos, int receiver, int chars) {
        wire.phantom(atNanos, receiver, chars);
    }

    @Override
    public void reset(long atNanos, int node, long readyNanos) {
        wire.reset(atNanos, node, readyNanos);
        parts.reset(node, readyNanos);
    }

    @Override
    public void overrun(long atNanos, int node, int transaction) {
        wire.overrun(atNanos, node);
    }

    @Override
    public void applied(long atNanos, int slot, int serial, long heardNanos) {
        parts.applied(atNanos, slot, serial, heardNanos);
        wire.applied(atNanos, parts.nodeOf(slot), heardNanos);
    }

    @Override
    public void shown(long atNanos, int slot, int serial) {
        parts.shown(atNanos, slot, serial);
    }

    @Override
    public void moved(long atNanos, int slot, long from, long untilNanos, long to) {
        parts.moved(atNanos, slot, from, untilNanos, to);
    }

    @Override
    public void controlMoved(long atNanos, int control, int serial, int value) {
        parts.controlMoved(atNanos, control, serial);
    }

    @Override
    public void sampled(long atNanos, int control, int serial) {
        parts.sampled(atNanos, control, serial);
    }

    @Override
    public void ended(long atNanos) {
        wire.ended(atNanos);
        parts.ended(atNanos);
        controller.ended(atNanos);
    }
}
