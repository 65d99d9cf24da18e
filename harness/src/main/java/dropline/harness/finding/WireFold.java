package dropline.harness.finding;

import static dropline.bus.trace.TraceSink.CONTROLLER;
import static dropline.bus.trace.TraceSink.REPLY;
import static dropline.bus.trace.TraceSink.REQUEST;

import java.util.Arrays;

/**
 * Folds frames and what receivers made of them. A frame of the controller and all that follows until its next one are
 * one exchange; it is summed up when the next begins.
 */
final class WireFold {
    private static final int NOBODY = -2;

    /** Frames of the controller whose length is remembered. */
    private static final int RECENT = 32;

    private static final double MOST = 0.6;
    private static final long ROUNDING_NANOS = 100;

    private final BusEvidence bus;
    private final NodeEvidence[] nodes;
    private final Promise[] promises;
    private final ShapeFold shapes;
    private final long[] requestEnd;
    private final long[] earlierEnd;
    private final long[] readyNanos;
    private final long[] lastPhantom;
    private final double charNanos;
    private final long toleranceNanos;

    private long charsBefore;
    private long charsSoFar;

    private boolean open;
    private boolean isRetry;
    private int kind;
    private int target;
    private int transaction;
    private long start;
    private int chars;
    private boolean carries;
    private int wrongReceivers;
    private boolean requestClashed;
    private boolean targetWrong;
    private boolean targetTalked;
    private boolean targetOverrun;
    private boolean answered;
    private int lastReplier = NOBODY;
    private int previousReplier = NOBODY;
    private final int hearers;

    private final long[] recentEnd = new long[RECENT];
    private final int[] recentChars = new int[RECENT];
    private int recent;

    /**
     * {@code nodes} and {@code promises} are by index of the pit's layout, null where a node is not the segment's;
     * instants are off by {@code slackNanos} at most.
     */
    WireFold(
            BusEvidence bus, NodeEvidence[] nodes, Promise[] promises, int hearers, double charNanos, long slackNanos) {
        this.bus = bus;
        toleranceNanos = ROUNDING_NANOS + slackNanos;
        this.nodes = nodes;
        this.promises = promises;
        this.hearers = hearers;
        this.charNanos = charNanos;
        shapes = new ShapeFold(nodes, promises);
        requestEnd = new long[nodes.length];
        earlierEnd = new long[nodes.length];
        readyNanos = new long[nodes.length];
        lastPhantom = new long[nodes.length + 1];
        Arrays.fill(lastPhantom, Long.MIN_VALUE);
    }

    // --- drivers

    void driverOn(long at, int talker) {
        shapes.driverOn(at, talker);
    }

    void driverOff(long at, int talker) {
        shapes.driverOff(at, talker);
    }

    void clash(long at, int talker, int other) {
        shapes.clash(talker, other);
        requestClashed |= (talker == CONTROLLER || other == CONTROLLER) && shapes.isSending(CONTROLLER);
        bus.clashes.add(at, 1);
    }

    // --- frames

    void frameStarted(long at, int talker, int frame, int node, int frameTransaction, int frameChars) {
        shapes.started(at, talker, frameChars);
        charsBefore = charsSoFar;
        charsSoFar += frameChars;
        if (talker == CONTROLLER) {
            close();
            begin(at, frame, node, frameTransaction, frameChars);
        } else if (frame == REPLY) {
            reply(at, talker, node, frameTransaction);
        } else {
            nodes[talker].babble.add(at, frameChars);
        }
    }

    private void begin(long at, int frame, int node, int frameTransaction, int frameChars) {
        open = true;
        isRetry = frame == REQUEST && kind == REQUEST && node == target && frameTransaction == transaction;
        kind = frame;
        target = node;
        transaction = frameTransaction;
        start = at;
        chars = frameChars;
        carries = false;
        wrongReceivers = 0;
        requestClashed = shapes.isClashed(CONTROLLER);
        targetWrong = false;
        targetTalked = false;
        targetOverrun = false;
        answered = false;
        previousReplier = lastReplier;
        lastReplier = NOBODY;
    }

    private void reply(long at, int talker, int node, int frameTransaction) {
        NodeEvidence evidence = nodes[talker];
        if (node != talker) {
            evidence.forAnother.add(at, node);
            lastReplier = talker;
            return;
        }
        boolean stillAsking = shapes.isSending(CONTROLLER) && kind == REQUEST && target == talker;
        long asked = stillAsking ? start + Math.round(chars * charNanos) : requestEnd[talker];
        boolean belated = kind != REQUEST || target != talker || frameTransaction != transaction || isRetry;
        if (belated && at - asked < promises[talker].leastGapNanos()) {
            asked = earlierEnd[talker];
        }
        judgeGap(at, talker, at - asked);
        if (promises[talker].loopReplies()) {
            evidence.running(at, charsBefore);
        }
        lastReplier = talker;
        if (kind == REQUEST && target == talker && frameTransaction == transaction) {
            targetTalked = true;
        } else {
            replied(evidence);
        }
    }

    private void judgeGap(long at, int node, long gap) {
        if (promises[node].leastGapNanos() - gap > toleranceNanos) {
            nodes[node].tooSoon.add(at, gap);
        } else if (gap - promises[node].mostGapNanos() > toleranceNanos) {
            nodes[node].late.add(at, gap);
        }
    }

    void frameEnded(long at, int talker) {
        shapes.ended(at, talker);
        if (talker != CONTROLLER) {
            return;
        }
        if (kind == REQUEST) {
            earlierEnd[target] = requestEnd[target];
            requestEnd[target] = at;
        }
        recent = (recent + 1) % RECENT;
        recentEnd[recent] = at;
        recentChars[recent] = chars;
    }

    void carried() {
        carries = true;
    }

    void answered(long at, int node, long gapNanos) {
        answered = true;
        if (!targetTalked) {
            judgeGap(at, node, gapNanos);
        }
        nodes[node].answered++;
        bus.answers++;
        bus.answersSinceWrong += bus.wrongReplies.count() > 0 ? 1 : 0;
    }

    /** What comes is over; sums up the last exchange. */
    void ended(long at) {
        close();
        shapes.finish(at);
    }

    // --- receivers

    void receivedWrong(long at, int receiver, int talker) {
        if (shapes.isClashed(talker)) {
            return;
        }
        if (talker == CONTROLLER && receiver == CONTROLLER) {
            bus.echoes.add(at, 1);
            return;
        }
        bus.wrong.add(at, 1);
        bus.wrongWithoutPhantom += lastPhantom[receiver + 1] == at ? 0 : 1;
        if (receiver == CONTROLLER) {
            bus.wrongReplies.add(at, talker);
        } else if (talker == CONTROLLER) {
            NodeEvidence evidence = nodes[receiver];
            evidence.wrong.add(at, chars);
            evidence.wrongAfterReply += previousReplier == NOBODY ? 0 : 1;
            wrongReceivers++;
            targetWrong |= receiver == target;
        }
    }

    void phantom(long at, int receiver, int count) {
        bus.phantoms.add(at, count);
        lastPhantom[receiver + 1] = at;
        if (receiver == CONTROLLER) {
            return;
        }
        nodes[receiver].phantoms.add(at, count);
        if (previousReplier == receiver) {
            nodes[receiver].phantomsOfOwn.add(at, count);
        }
    }

    void overrun(long at, int node) {
        NodeEvidence evidence = nodes[node];
        evidence.overrunEpisodes += evidence.losing ? 0 : 1;
        evidence.losing = true;
        boolean room =
                start >= evidence.runningNanos && charsSoFar - evidence.charsWhenRunning <= promises[node].ringChars();
        evidence.overrunsWithRoom += room ? 1 : 0;
        evidence.overruns.add(at, chars);
        targetOverrun |= node == target;
    }

    void reset(long at, int node, long ready) {
        nodes[node].resets.add(at, ready - at);
        readyNanos[node] = Math.max(readyNanos[node], ready);
        bus.restarted(at);
    }

    // --- exchanges

    private void close() {
        if (!open) {
            return;
        }
        open = false;
        if (carries) {
            bus.stateFrames++;
        }
        boolean afterReply = previousReplier != NOBODY;
        if (kind == REQUEST) {
            if (targetWrong) {
                (carries ? bus.stateFramesLost : bus.plainFramesLost).add(start, target);
            }
            closePoll(nodes[target], afterReply);
            return;
        }
        if (wrongReceivers > MOST * hearers) {
            bus.stateFramesLost.add(start, wrongReceivers);
        }
        bus.broadcastsAfterReply += afterReply ? 1 : 0;
        bus.broadcastsOtherwise += afterReply ? 0 : 1;
    }

    private void closePoll(NodeEvidence evidence, boolean afterReply) {
        bus.polls++;
        evidence.asked++;
        evidence.askedAfterReply += afterReply ? 1 : 0;
        evidence.askedOtherwise += afterReply ? 0 : 1;
        evidence.askedSince += evidence.forAnother.count() > 0 ? 1 : 0;
        if (!answered) {
            bus.failures.add(start, target);
        }
        if (targetTalked || answered) {
            replied(evidence);
            taken(evidence, chars);
            if (!answered) {
                evidence.unheard.add(start, 1);
            }
        } else if (start < readyNanos[target]) {
            evidence.starting.add(start, 1);
        } else if (requestClashed) {
            evidence.deafened.add(start, 1);
        } else if (targetWrong) {
            evidence.deaf.add(start, 1);
        } else if (!targetOverrun) {
            evidence.silentRun++;
            evidence.longestSilentRun = Math.max(evidence.longestSilentRun, evidence.silentRun);
            evidence.silent.add(start, evidence.silentRun);
        }
    }

    private static void replied(NodeEvidence evidence) {
        evidence.replied++;
        evidence.silentRun = 0;
        evidence.repliedSince += evidence.forAnother.count() > 0 ? 1 : 0;
        evidence.repliedSinceWrong += evidence.wrong.count() > 0 ? 1 : 0;
    }

    private static void taken(NodeEvidence evidence, int length) {
        evidence.losing = false;
        if (evidence.overruns.count() > 0) {
            evidence.longestTaken = Math.max(evidence.longestTaken, length);
        }
    }

    /** A node's program has a value from the frame it heard whole at that instant. */
    void applied(long at, int node, long heardNanos) {
        NodeEvidence evidence = nodes[node];
        evidence.running(at, charsBefore);
        if (evidence.overruns.count() == 0 || heardNanos <= evidence.overruns.firstNanos()) {
            return;
        }
        for (int i = 0; i < RECENT; i++) {
            int frame = Math.floorMod(recent - i, RECENT);
            if (Math.abs(recentEnd[frame] - heardNanos) <= charNanos) {
                taken(evidence, recentChars[frame]);
                return;
            }
        }
    }
}
