package dropline.harness.finding;

import static dropline.harness.finding.Confidence.CERTAIN;
import static dropline.harness.finding.Confidence.LIKELY;
import static dropline.harness.finding.Confidence.POSSIBLE;

import dropline.bus.pit.Control;
import dropline.bus.pit.Controller;

/** What good replies show of what is wrong, seen from the controller alone. */
final class ReplyRules {
    private static final int MOST_A_SECOND = 8;

    private final Scene scene;
    private final BusEvidence bus;
    private final Controller controller;

    ReplyRules(Scene scene) {
        this.scene = scene;
        this.bus = scene.bus;
        this.controller = scene.segment.controller();
    }

    void says(NodeEvidence node) {
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
                    "Exchange the board for a like one. If the errors stay at the place, "
                            + "it is the wiring (common wire); if"
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

    void tooSoon(NodeEvidence node) {
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

    void late(NodeEvidence node, Sightings seen) {
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

    void sentAgain() {
        long errors = scene.nodes.stream()
                .filter(node -> node.receiveErrors.count() > 0)
                .count();
        long rounds = controller.refreshNanos() == 0 ? 0 : 1 + bus.endedNanos / controller.refreshNanos();
        long refreshes = rounds
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
                    "See whether every node misses the same state frames: then they leave "
                            + "the controller damaged. If each"
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

    void controls() {
        for (ControlEvidence control : scene.evidence.controls()) {
            if (control == null) {
                continue;
            }
            Control.Kind kind =
                    scene.layout.controls().get(control.control).control().kind();
            if (kind.isContact() && control.mostToldInASecond > MOST_A_SECOND) {
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
