package dropline.harness.finding;

import static dropline.harness.finding.Confidence.CERTAIN;
import static dropline.harness.finding.Confidence.LIKELY;
import static dropline.harness.finding.Confidence.POSSIBLE;

import dropline.bus.pit.Controller;
import java.util.List;

/**
 * What is wrong as far as a controller can see it: much looks alike from there, so that most findings name several
 * causes and the test that tells them apart.
 */
final class ControllerRules {
    private static final int FEW = 2;
    private static final int SEVERAL = 4;
    private static final long OUTAGE_NANOS = 1_500_000_000L;
    private static final double MOST = 0.6;

    private final Scene scene;
    private final BusEvidence bus;
    private final Controller controller;
    private final ReplyRules replies;

    ControllerRules(Scene scene) {
        this.scene = scene;
        this.bus = scene.bus;
        this.controller = scene.segment.controller();
        this.replies = new ReplyRules(scene);
    }

    void judge() {
        if (bus.noState.count() > 0) {
            scene.host(
                    bus.noState,
                    "for " + Words.time(bus.noState.most()) + " from " + Words.time(bus.noState.firstNanos())
                            + " nothing came, though there was something to tell",
                    Cause.SILENT_HOST);
        }
        adapter();
        boolean restarted = restarts() || outage();
        List<NodeEvidence> silent = scene.nodes.stream().filter(this::isSilent).toList();
        List<NodeEvidence> failing = scene.nodes.stream()
                .filter(node -> !silent.contains(node) && fails(node))
                .toList();
        if (!restarted && !silent.isEmpty() && silent.size() >= Math.max(2, scene.nodes.size() / 2 + 1)) {
            allSilent(silent);
        } else if (!restarted && failing.size() + silent.size() >= Math.max(3, scene.nodes.size() / 2 + 1)) {
            manyFail(failing);
        } else {
            silent.forEach(node -> oneSilent(node, failing));
            failing.forEach(this::oneFails);
        }
        for (NodeEvidence node : scene.nodes) {
            if (!scene.named(node)) {
                replies.says(node);
            }
        }
        if (scene.findings().isEmpty()) {
            replies.sentAgain();
        }
        replies.controls();
    }

    private void adapter() {
        Sightings slow = bus.slowReply.count() >= bus.slowState.count() ? bus.slowReply : bus.slowState;
        if (slow.count() > FEW) {
            scene.segment(
                    LIKELY,
                    slow,
                    "up to " + Words.time(slow.most()) + " went by in the adapter, " + Words.seen(slow)
                            + ", more than the pit file allows",
                    Cause.SLOW_ADAPTER);
        }
    }

    // --- restarts, where replies count them

    private boolean restarts() {
        List<NodeEvidence> restarted =
                scene.nodes.stream().filter(node -> node.boots.count() > 0).toList();
        if (restarted.size() >= FEW) {
            scene.segment(
                    LIKELY,
                    restarted.get(0).boots,
                    "the restart counters of " + restarted.size() + " of " + scene.nodes.size() + " nodes went up",
                    Cause.BROWN_OUT);
            return true;
        }
        restarted.forEach(node -> scene.node(
                node, CERTAIN, node.boots, "its restart counter went up, " + Words.seen(node.boots), Cause.RESET));
        return !restarted.isEmpty();
    }

    /** Several nodes missing once, all at the same time. */
    private boolean outage() {
        List<NodeEvidence> out = scene.nodes.stream()
                .filter(node -> node.timeOuts.count() > 0 && node.timeOuts.count() == node.longestFailingRun)
                .filter(node -> !isSilent(node) && !scene.promise(node).losesFrames())
                .toList();
        long first =
                out.stream().mapToLong(node -> node.timeOuts.firstNanos()).min().orElse(0);
        long last =
                out.stream().mapToLong(node -> node.timeOuts.lastNanos()).max().orElse(0);
        if (out.size() < FEW || last - first > OUTAGE_NANOS) {
            return false;
        }
        scene.segmentNext(
                POSSIBLE,
                bus.failures,
                out.size() + " of " + scene.nodes.size() + " nodes were missing together once, from "
                        + Words.time(first) + " to " + Words.time(last) + ", and came back",
                "Look whether the boards' lights went out at that moment: then it is the supply. If they stayed on,"
                        + " something blocked the line.",
                Cause.BROWN_OUT,
                Cause.STUCK_DRIVER,
                Cause.NOISE_BURST,
                Cause.BABBLING_NODE);
        return true;
    }

    // --- polls that fail

    /** Never answered, or stopped answering. */
    private boolean isSilent(NodeEvidence node) {
        return node.failingRun >= SEVERAL || (node.answered == 0 && node.timeOuts.count() >= FEW);
    }

    /** More time-outs than the pit file explains. A board that may lose frames as described must lose most of them. */
    private boolean fails(NodeEvidence node) {
        Promise promise = scene.promise(node);
        boolean explained = promise.losesFrames() || promise.answerNanos() > controller.timeOutNanos();
        double allowed = explained ? MOST * node.asked : 0;
        return node.timeOuts.count() > allowed && node.timeOuts.count() >= FEW;
    }

    private void allSilent(List<NodeEvidence> silent) {
        scene.segmentNext(
                LIKELY,
                bus.failures,
                silent.size() + " of " + scene.nodes.size() + " nodes give no good reply; "
                        + Words.of(bus.failures.count(), bus.polls) + " polls failed",
                "Unplug the boards one by one. If the others come back, that board blocks the line. If none does, look"
                        + " at what all share: supply, adapter (does it echo, is its latency timer long), bias.",
                Cause.STUCK_DRIVER,
                Cause.ECHO,
                Cause.SLOW_ADAPTER,
                Cause.MISSING_BIAS,
                Cause.BROWN_OUT,
                Cause.BABBLING_NODE);
    }

    private void manyFail(List<NodeEvidence> failing) {
        scene.segmentNext(
                LIKELY,
                bus.failures,
                failing.size() + " of " + scene.nodes.size() + " nodes miss polls now and then, "
                        + Words.of(bus.failures.count(), bus.polls) + " polls failed",
                "Unplug the boards one by one: if the failures stop, that board talks "
                        + "out of turn. If not, watch the idle"
                        + " line: noise all the time is missing bias, noise in bursts comes from outside.",
                Cause.NOISE_BURST,
                Cause.MISSING_BIAS,
                Cause.BABBLING_NODE,
                Cause.STUCK_DRIVER,
                Cause.BROWN_OUT,
                Cause.LOST_STATE_FRAME,
                Cause.ECHO);
    }

    private void oneSilent(NodeEvidence node, List<NodeEvidence> failing) {
        if (scene.named(node)) {
            return;
        }
        String shows = Words.of(node.timeOuts.count(), node.asked) + " requests got no good reply, the last "
                + node.failingRun + " in a row";
        String next =
                "Look whether its supply light is on, then unplug its neighbours' replies from the question: connect"
                        + " this board alone. If it answers alone, two boards share an address. "
                        + "If not, watch its driver-enable"
                        + " pin: quiet means it hears nothing (baud rate, A and B exchanged, fed through its leads).";
        if (failing.isEmpty()) {
            scene.nodeNext(
                    node,
                    LIKELY,
                    node.timeOuts,
                    shows,
                    next,
                    Cause.DEAD_NODE,
                    Cause.BACK_FEED,
                    Cause.WRONG_BAUD,
                    Cause.SWAPPED_PAIR,
                    Cause.CLOCK_OFF,
                    Cause.DUPLICATE_ADDRESS,
                    Cause.RESET,
                    Cause.RING_OVERRUN,
                    Cause.LOOP_STALL,
                    Cause.ANSWERS_ANOTHER,
                    Cause.DRIVER_ENABLED_LATE,
                    Cause.DRIVER_RELEASED_EARLY,
                    Cause.DRIVER_RELEASED_LATE);
        } else {
            scene.nodeNext(
                    node,
                    LIKELY,
                    node.timeOuts,
                    shows + ", and node " + scene.name(failing.get(0)) + " fails now and then",
                    next,
                    Cause.DUPLICATE_ADDRESS,
                    Cause.DEAD_NODE,
                    Cause.SWAPPED_PAIR);
        }
    }

    private void oneFails(NodeEvidence node) {
        if (scene.named(node)) {
            return;
        }
        String shows = Words.of(node.timeOuts.count(), node.asked) + " requests got no good reply, at most "
                + node.longestFailingRun + " in a row";
        if (node.tooSoon.count() > 0) {
            replies.tooSoon(node);
        } else if (node.late.count() > 0 || node.longLoops.count() > 0) {
            replies.late(node, node.late.count() > 0 ? node.late : node.longLoops);
        } else if (node.receiveErrors.count() > 0) {
            scene.nodeNext(
                    node,
                    LIKELY,
                    node.timeOuts,
                    shows + "; it counts receive errors, " + Words.seen(node.receiveErrors),
                    "Exchange the board for a like one. If the fault stays at the place, "
                            + "it is the wiring (common wire); if"
                            + " it goes with the board, look for interrupts switched off and small buffers.",
                    Cause.COMMON_WIRE_LIFTED,
                    Cause.BLACKOUT,
                    Cause.RING_OVERRUN,
                    Cause.FLOATING_RECEIVER,
                    Cause.CLOCK_OFF,
                    Cause.EAVESDROPPER,
                    Cause.DRIVER_RELEASED_LATE,
                    Cause.NOISE_BURST,
                    Cause.BABBLING_NODE,
                    Cause.STUCK_DRIVER);
        } else {
            scene.nodeNext(
                    node,
                    POSSIBLE,
                    node.timeOuts,
                    shows,
                    "Put a logic probe on the line and on its driver-enable pin: no reply "
                            + "means it missed the request; a"
                            + " reply means its edges are wrong, or the node polled before it holds the line too long.",
                    Cause.EAVESDROPPER,
                    Cause.DRIVER_ENABLED_LATE,
                    Cause.DRIVER_ENABLED_EARLY,
                    Cause.DRIVER_RELEASED_EARLY,
                    Cause.DRIVER_RELEASED_LATE,
                    Cause.ANSWERS_ANOTHER,
                    Cause.DUPLICATE_ADDRESS,
                    Cause.BLACKOUT,
                    Cause.LOOP_STALL,
                    Cause.RING_OVERRUN,
                    Cause.COMMON_WIRE_LIFTED,
                    Cause.FLOATING_RECEIVER,
                    Cause.RESET,
                    Cause.REPLY_TOO_SOON,
                    Cause.NOISE_BURST,
                    Cause.BABBLING_NODE,
                    Cause.STUCK_DRIVER,
                    Cause.MISSING_BIAS,
                    Cause.CLOCK_OFF,
                    Cause.LOST_STATE_FRAME);
        }
    }
}
