package dropline.harness.finding;

import dropline.bus.pit.Adapter;
import dropline.bus.pit.Controller;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;

/** Folds what the host sends and what the controller makes of it. */
final class ControllerFold {
    private static final long SLACK_NANOS = 2_000_000L;
    private static final long SILENT_NANOS = 200_000_000L;
    private static final long NEVER = -1;

    private final BusEvidence bus;
    private final NodeEvidence[] nodes;
    private final Promise[] promises;
    private final long periodNanos;
    private final boolean hub;
    private final long adapterNanos;
    private final int[] controlNode;

    private final int[] unsent;
    private final boolean[] isUnsent;
    private int unsentCount;
    private long quietSince = NEVER;
    private long lastSentNanos;
    private final long[] sentNanos;
    private final int[] sentSerial;
    private final int[] serial;
    private final int[] carriedSerial;
    private final long[] answeredNanos;
    private long requestEnd;

    ControllerFold(
            Pit pit,
            Layout layout,
            int segmentIndex,
            BusEvidence bus,
            NodeEvidence[] nodes,
            Promise[] promises,
            long slackNanos) {
        this.bus = bus;
        this.nodes = nodes;
        this.promises = promises;
        periodNanos = pit.statePeriodNanos();
        Segment segment = pit.segments().get(segmentIndex);
        hub = segment.controller().kind() == Controller.Kind.HUB;
        adapterNanos = longest(segment.controller().adapter()) + slackNanos;
        controlNode =
                layout.controls().stream().mapToInt(Layout.ControlPlace::node).toArray();
        int count = pit.signals().size();
        unsent = new int[count];
        isUnsent = new boolean[count];
        sentNanos = new long[count];
        sentSerial = new int[count];
        serial = new int[count];
        carriedSerial = new int[count];
        answeredNanos = new long[nodes.length];
    }

    private static long longest(Adapter adapter) {
        long wake = adapter.wakeUp().maxNanos();
        long most =
                wake < Long.MAX_VALUE ? wake : 40 * Math.round(adapter.wakeUp().meanNanos());
        return adapter.latencyTimerNanos() + adapter.frameNanos() + most + SLACK_NANOS;
    }

    // --- state

    void stateChanged(long at, int signal, int changeSerial) {
        serial[signal] = changeSerial;
        if (!isUnsent[signal]) {
            isUnsent[signal] = true;
            unsent[unsentCount++] = signal;
        }
        if (quietSince == NEVER) {
            quietSince = at;
        }
    }

    void stateSent(long at) {
        silence(at);
        bus.statesSent++;
        lastSentNanos = at;
        quietSince = NEVER;
        for (int i = 0; i < unsentCount; i++) {
            int signal = unsent[i];
            isUnsent[signal] = false;
            sentNanos[signal] = at;
            sentSerial[signal] = serial[signal];
        }
        unsentCount = 0;
    }

    private void silence(long at) {
        long since = quietSince == NEVER ? at : quietSince;
        if (periodNanos > 0) {
            since = Math.min(since, lastSentNanos);
        }
        if (at - since > 3 * periodNanos + SILENT_NANOS) {
            bus.noState.add(since, at - since);
        }
    }

    void queued(long at, int signal, int queuedSerial) {
        if (queuedSerial == sentSerial[signal] && at - sentNanos[signal] > adapterNanos) {
            bus.slowState.add(at, at - sentNanos[signal]);
        }
    }

    void carried(long at, int signal, int carrySerial) {
        if (carriedSerial[signal] == carrySerial) {
            bus.sentAgain.add(at, 1);
        }
        carriedSerial[signal] = carrySerial;
    }

    // --- polls

    void requestEnded(long at) {
        requestEnd = at;
    }

    void answered(long at, int node, long gapNanos) {
        NodeEvidence evidence = nodes[node];
        evidence.failingRun = 0;
        answeredNanos[node] = at;
        long reply = promises[node].answerNanos() - promises[node].mostGapNanos();
        long delay = at - requestEnd - gapNanos - reply;
        if (!hub && delay > adapterNanos) {
            bus.slowReply.add(at, delay);
        }
    }

    void told(long at, int control) {
        long delay = at - answeredNanos[controlNode[control]];
        if (hub && delay > adapterNanos) {
            bus.slowReply.add(at, delay);
        }
    }

    void timedOut(long at, int node, int attempt) {
        NodeEvidence evidence = nodes[node];
        evidence.timeOuts.add(at, attempt);
        evidence.failingRun++;
        evidence.longestFailingRun = Math.max(evidence.longestFailingRun, evidence.failingRun);
    }

    void gaveUp(long at, int node) {
        nodes[node].gaveUp.add(at, 1);
    }

    void nodeStatus(long at, int node, int boots, int receiveErrors, long longestLoopNanos) {
        nodes[node].status(at, boots, receiveErrors, longestLoopNanos, promises[node].mostLoopNanos());
    }

    void ended(long at) {
        bus.endedNanos = at;
        silence(at);
    }
}
