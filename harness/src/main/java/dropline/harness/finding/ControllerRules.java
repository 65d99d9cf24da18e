package dropline.harness.finding;

import static dropline.harness.finding.Confidence.CERTAIN;
import static dropline.harness.finding.Confidence.LIKELY;
import static dropline.harness.finding.Confidence.POSSIBLE;

import dropline.bus.pit.Control;
import dropline.bus.pit.Controller;
import java.util.List;

/**
 * What is wrong as far as a controller can see it: much looks alike from there, so that most findings name several
 * causes and the test that tells them apart.
 */
final class ControllerRules {
    private static final int FEW = 2;
    private static final int SEVERAL = 4;
    private static final double MOST = 0.6;
    private static final int MOST_A_SECOND = 8;

    private final Scene scene;
    private final BusEvidence bus;
    private final Controller controller;

    ControllerRules(Scene scene) {
        this.scene = scene;
        this.bus = scene.bus;
        this.controller = scene.segment.controller();
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
        boolean restarted = restarts();
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
                says(node);
            }
        }
        if (scene.findings().isEmpty()) {
            sentAgain();
        }
        controls();
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
        if (restarted.size() >= 2 && restarted.size() >= (2 * scene.nodes.size() + 2) / 3) {
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
                "Unplug the boards one by one: if the failures stop, that board talks out of turn. If not, watch the idle"
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
                        + " this board alone. If it answers alone, two boards share an address. If not, watch its driver-enable"
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
            tooSoon(node);
        } else if (node.late.count() > 0 || node.longLoops.count() > 0) {
            late(node, node.late.count() > 0 ? node.late : node.longLoops);
        } else if (node.receiveErrors.count() > 0) {
            scene.nodeNext(
                    node,
                    LIKELY,
                    node.timeOuts,
                    shows + "; it counts receive errors, " + Words.seen(node.receiveErrors),
                    "Exchange the board for a like one. If the fault stays at the place, it is the wiring (common wire); if"
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
                    "Put a logic probe on the line and on its driver-enable pin: no reply means it missed the request; a"
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

    // --- what good replies show

    private void says(NodeEvidence node) {
        if (node.tooSoon.count() > 0) {
            tooSoon(node);
        } else if (node.late.count() > 0 || node.longLoops.count() > 0) {
            late(node, node.late.count() > 0 ? node.late : node.longLoops);
        } else if (node.receiveErrors.count() > 0 && !scene.promise(node).losesFrames() && alone(node)) {
            scene.nodeNext(
                    node,
                    POSSIBLE,
                    node.receiveErrors,
                    "it counts receive errors, " + Words.seen(node.receiveErrors) + ", though it answers",
                    "Exchange the board for a like one. If the errors stay at the place, it is the wiring (common wire); if"
                            + " they go with the board, look for interrupts switched off and small buffers.",
                    Cause.COMMON_WIRE_LIFTED,
                    Cause.BLACKOUT,
                    Cause.RING_OVERRUN,
                    Cause.FLOATING_RECEIVER);
        }
    }

    private boolean alone(NodeEvidence node) {
        return scene.nodes.stream().noneMatch(other -> other != node && other.receiveErrors.count() > 0);
    }

    private void tooSoon(NodeEvidence node) {
        scene.node(
                node,
                CERTAIN,
                node.tooSoon,
                "a reply came " + Words.bits(node.tooSoon.least(), scene.segment.baud())
                        + " after the request, at least "
                        + Words.time(scene.promise(node).leastGapNanos()) + " are described, "
                        + Words.seen(node.tooSoon),
                Cause.REPLY_TOO_SOON);
    }

    private void late(NodeEvidence node, Sightings seen) {
        scene.nodeNext(
                node,
                LIKELY,
                seen,
                (seen == node.late ? "a reply came up to " : "a pass of its loop took up to ")
                        + Words.time(seen.most()) + (seen == node.late ? " after its request" : "")
                        + ", more than its profile and what blocks it explain, " + Words.seen(seen),
                "Have the firmware note its longest loop: long means the loop stands still, short means its interrupts"
                        + " were off.",
                Cause.LOOP_STALL,
                Cause.BLACKOUT);
    }

    // --- state sent again, controls

    private void sentAgain() {
        long errors = scene.nodes.stream()
                .filter(node -> node.receiveErrors.count() > 0)
                .count();
        double refreshes = controller.refreshNanos() == 0
                ? 0
                : (1.0 + bus.endedNanos / controller.refreshNanos())
                        * scene.layout.slots().stream()
                                .filter(slot -> slot.segment() == scene.evidence.segment())
                                .count();
        boolean lossy =
                scene.nodes.stream().anyMatch(node -> scene.promise(node).losesFrames());
        if (!lossy && (errors > 1 || bus.sentAgain.count() > 1.2 * refreshes + 1)) {
            scene.segmentNext(
                    POSSIBLE,
                    bus.sentAgain.count() > 0 ? bus.sentAgain : scene.nodes.get(0).receiveErrors,
                    "state was sent again " + bus.sentAgain.count() + " times since nodes had not got it; " + errors
                            + " of " + scene.nodes.size() + " nodes count receive errors",
                    "See whether every node misses the same state frames: then they leave the controller damaged. If each"
                            + " misses others, it is noise or bias.",
                    Cause.LOST_STATE_FRAME,
                    Cause.NOISE_BURST,
                    Cause.MISSING_BIAS,
                    Cause.COMMON_WIRE_LIFTED,
                    Cause.BLACKOUT,
                    Cause.RING_OVERRUN,
                    Cause.EAVESDROPPER);
        }
    }

    private void controls() {
        for (ControlEvidence control : scene.evidence.controls()) {
            if (control == null) {
                continue;
            }
            Control.Kind kind =
                    scene.layout.controls().get(control.control).control().kind();
            boolean contact = kind == Control.Kind.TOGGLE || kind == Control.Kind.BUTTON;
            if (contact && control.mostToldInASecond > MOST_A_SECOND) {
                scene.control(
                        control,
                        LIKELY,
                        control.told,
                        "the host was told of " + control.mostToldInASecond + " changes in one second",
                        Cause.SWITCH_FLICKERS);
            }
        }
    }
}
