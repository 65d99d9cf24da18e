package dropline.harness.cli;

import dropline.bus.trace.TraceSink;

/** Hands on what is said and answered, and leaves out what it means to panels and controls. */
final class WireOnly implements TraceSink {
    private final TraceSink behind;

    WireOnly(TraceSink behind) {
        this.behind = behind;
    }

    @Override
    public void frameStarted(long atNanos, int talker, int frame, int node, int transaction, int chars) {
        behind.frameStarted(atNanos, talker, frame, node, transaction, chars);
    }

    @Override
    public void carried(long atNanos, int destination, int signal, int serial, int transaction) {
        behind.carried(atNanos, destination, signal, serial, transaction);
    }

    @Override
    public void frameEnded(long atNanos, int talker, int frame, int node, int transaction) {
        behind.frameEnded(atNanos, talker, frame, node, transaction);
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
    public void cycleStarted(long atNanos, int cycle) {
        behind.cycleStarted(atNanos, cycle);
    }

    @Override
    public void ended(long atNanos) {
        behind.ended(atNanos);
    }
}
