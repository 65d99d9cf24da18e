package dropline.harness.replay;

import dropline.bus.trace.TraceSink;
import java.util.Locale;

/** Counts a segment's events and stops its run where there are more than a {@link RunLimit} allows. */
final class EventGuard implements TraceSink {
    private static final long SECOND = 1_000_000_000L;

    private final String segment;
    private final RunLimit limit;
    private long before;
    private long inSecond;
    private long secondEnds = SECOND;

    EventGuard(String segment, RunLimit limit) {
        this.segment = segment;
        this.limit = limit;
    }

    private void count(long atNanos) {
        if (atNanos >= secondEnds) {
            before += inSecond;
            inSecond = 0;
            secondEnds = atNanos / SECOND * SECOND + SECOND;
        }
        inSecond++;
        if (inSecond > limit.mostEventsPerSecond()) {
            throw stopped(
                    atNanos,
                    limit.mostEventsPerSecond(),
                    "events in one simulated second. Leave out faults that strike often, or lower their rate; without"
                            + " faults, please report it");
        }
        if (before + inSecond > limit.mostEvents()) {
            throw stopped(
                    atNanos, limit.mostEvents(), "events in all. Play a shorter stretch: --from and --to, or --for");
        }
    }

    private RunLimitException stopped(long atNanos, long most, String what) {
        return new RunLimitException(String.format(
                Locale.ROOT,
                "the run was stopped at %.3f s, at its event limit: segment %s had more than %,d %s",
                atNanos / 1e9,
                segment,
                most,
                what));
    }

    @Override
    public void stateChanged(long atNanos, int signal, int serial, long value) {
        count(atNanos);
    }

    @Override
    public void stateSent(long atNanos) {
        count(atNanos);
    }

    @Override
    public void queued(long atNanos, int destination, int signal, int serial) {
        count(atNanos);
    }

    @Override
    public void coalesced(long atNanos, int destination, int signal, int serial) {
        count(atNanos);
    }

    @Override
    public void frameStarted(long atNanos, int talker, int frame, int node, int transaction, int chars) {
        count(atNanos);
    }

    @Override
    public void carried(long atNanos, int destination, int signal, int serial, int transaction) {
        count(atNanos);
    }

    @Override
    public void frameEnded(long atNanos, int talker, int frame, int node, int transaction) {
        count(atNanos);
    }

    @Override
    public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
        count(atNanos);
    }

    @Override
    public void timedOut(long atNanos, int node, int transaction, int attempt) {
        count(atNanos);
    }

    @Override
    public void gaveUp(long atNanos, int node, int transaction) {
        count(atNanos);
    }

    @Override
    public void backedOff(long atNanos, int node, long untilNanos) {
        count(atNanos);
    }

    @Override
    public void cycleStarted(long atNanos, int cycle) {
        count(atNanos);
    }

    @Override
    public void nodeStatus(
            long atNanos, int node, int boots, int receiveErrors, long longestLoopNanos, long refreshes) {
        count(atNanos);
    }

    @Override
    public void told(long atNanos, int control, int serial) {
        count(atNanos);
    }

    @Override
    public void driverOn(long atNanos, int talker) {
        count(atNanos);
    }

    @Override
    public void driverOff(long atNanos, int talker) {
        count(atNanos);
    }

    @Override
    public void clash(long atNanos, int talker, int other) {
        count(atNanos);
    }

    @Override
    public void receivedWrong(long atNanos, int receiver, int talker, int transaction) {
        count(atNanos);
    }

    @Override
    public void phantom(long atNanos, int receiver, int chars) {
        count(atNanos);
    }

    @Override
    public void reset(long atNanos, int node, long readyNanos) {
        count(atNanos);
    }

    @Override
    public void overrun(long atNanos, int node, int transaction) {
        count(atNanos);
    }

    @Override
    public void applied(long atNanos, int slot, int serial, long heardNanos) {
        count(atNanos);
    }

    @Override
    public void shown(long atNanos, int slot, int serial) {
        count(atNanos);
    }

    @Override
    public void moved(long atNanos, int slot, long from, long untilNanos, long to) {
        count(atNanos);
    }

    @Override
    public void controlMoved(long atNanos, int control, int serial, int value) {
        count(atNanos);
    }

    @Override
    public void sampled(long atNanos, int control, int serial) {
        count(atNanos);
    }

    @Override
    public void ended(long atNanos) {
        count(atNanos);
    }
}
