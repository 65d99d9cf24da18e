package dropline.harness.finding;

import static dropline.harness.finding.Confidence.CERTAIN;
import static dropline.harness.finding.Confidence.LIKELY;
import static dropline.harness.finding.Confidence.POSSIBLE;

import dropline.bus.pit.Transceiver;

/** What is wrong with one node, all tiers seen: what it sends first, for that spoils what others do. */
final class NodeRules {
    private static final int FEW = 2;
    private static final int SEVERAL = 3;

    private final Scene scene;
    private final int baud;

    NodeRules(Scene scene) {
        this.scene = scene;
        this.baud = scene.segment.baud();
    }

    /** What nodes send shows to the nanosecond, and spoils what others do. */
    void whatTheySend() {
        scene.nodes.forEach(this::address);
        scene.nodes.forEach(this::talks);
        scene.nodes.forEach(this::drives);
    }

    /** What nodes do not do, where nothing else explains it. */
    void whatTheyMiss() {
        for (NodeEvidence node : scene.nodes) {
            if (!restarts(node) && !hearing(node) && !buffers(node) && !blocked(node)) {
                silence(node);
            }
        }
    }

    /** What nodes do not do though somebody else spoils the line. */
    void whatTheyMissThough() {
        for (NodeEvidence node : scene.nodes) {
            if (!scene.named(node) && !restarts(node)) {
                silence(node);
            }
        }
    }

    private void address(NodeEvidence node) {
        int count = node.forAnother.count();
        if (count == 0) {
            return;
        }
        String other =
                scene.layout.nodes().get((int) node.forAnother.most()).node().name();
        boolean ownUnanswered = node.askedSince > 0 && node.repliedSince <= node.askedSince / 10;
        scene.node(
                node,
                ownUnanswered || count > FEW ? CERTAIN : LIKELY,
                node.forAnother,
                "it replied to " + count + " polls of node " + other + ", and since the first to "
                        + Words.of(node.repliedSince, node.askedSince) + " of its own",
                ownUnanswered ? Cause.DUPLICATE_ADDRESS : Cause.ANSWERS_ANOTHER);
    }

    private void talks(NodeEvidence node) {
        if (node.babble.count() > 0) {
            scene.node(
                    node,
                    CERTAIN,
                    node.babble,
                    node.babble.sum() + " characters that answer nothing, " + Words.seen(node.babble),
                    Cause.BABBLING_NODE);
        }
        if (node.fast.count() > FEW) {
            long ppm = node.fast.least() > 0 ? node.fast.most() : node.fast.least();
            scene.node(
                    node,
                    CERTAIN,
                    node.fast,
                    String.format(
                            java.util.Locale.ROOT,
                            "its characters are %.2f %% too %s, in %d of its %d frames",
                            Math.abs(ppm) / 1e4,
                            ppm > 0 ? "short" : "long",
                            node.fast.count(),
                            node.frames),
                    Cause.CLOCK_OFF);
        }
    }

    private void drives(NodeEvidence node) {
        drive(node, node.lateEnable, "late: the first character is cut", Cause.DRIVER_ENABLED_LATE);
        drive(node, node.earlyRelease, "too soon: the last character is cut", Cause.DRIVER_RELEASED_EARLY);
        drive(node, node.lateRelease, "too late: the next frame suffers", Cause.DRIVER_RELEASED_LATE);
        if (node.tooSoon.count() > 0) {
            scene.node(
                    node,
                    CERTAIN,
                    node.tooSoon,
                    "a reply came " + Words.bits(node.tooSoon.least(), baud) + " after the request, at least "
                            + Words.time(scene.promise(node).leastGapNanos()) + " are described, "
                            + Words.seen(node.tooSoon),
                    Cause.REPLY_TOO_SOON);
        } else {
            drive(node, node.earlyEnable, "too soon: the request may still be there", Cause.DRIVER_ENABLED_EARLY);
        }
    }

    private void drive(NodeEvidence node, Sightings seen, String what, Cause cause) {
        if (seen.count() > 0) {
            scene.node(
                    node, CERTAIN, seen, Words.bits(seen.most(), baud) + " " + what + ", " + Words.seen(seen), cause);
        }
    }

    // --- what a node does not do

    private boolean restarts(NodeEvidence node) {
        if (node.resets.count() == 0) {
            return false;
        }
        scene.node(
                node,
                CERTAIN,
                node.resets,
                "it restarted, " + Words.seen(node.resets) + ", and was silent for up to "
                        + Words.time(node.resets.most()),
                Cause.RESET);
        return true;
    }

    private boolean hearing(NodeEvidence node) {
        boolean described = scene.layout
                        .nodes()
                        .get(node.node)
                        .node()
                        .profile()
                        .transceiver()
                        .receiver()
                == Transceiver.Receiver.FLOATING_WHILE_SENDING;
        if (!described && node.phantomsOfOwn.count() >= FEW && node.phantomsOfOwn.count() == node.phantoms.count()) {
            scene.node(
                    node,
                    LIKELY,
                    node.phantomsOfOwn,
                    "characters that nobody sent spoilt the frame after one of its own, and no other, "
                            + Words.seen(node.phantomsOfOwn),
                    Cause.FLOATING_RECEIVER);
            return true;
        }
        if (node.deaf.count() >= FEW && node.repliedSinceWrong <= node.deaf.count() / 5) {
            String shows = "from " + Words.time(node.wrong.firstNanos()) + " on it received " + node.deaf.count()
                    + " requests wrong and replied to " + node.repliedSinceWrong;
            Cause[] causes = node.fast.count() > 0
                    ? new Cause[] {Cause.CLOCK_OFF}
                    : new Cause[] {Cause.WRONG_BAUD, Cause.CLOCK_OFF};
            scene.node(node, LIKELY, node.deaf, shows, causes);
            return true;
        }
        return node.wrong.count() > 0 && misheard(node);
    }

    /** Hears wrongly now and then, alone: after replies only, or whenever. */
    private boolean misheard(NodeEvidence node) {
        int after = scene.bus.broadcastsAfterReply + node.askedAfterReply;
        int otherwise = scene.bus.broadcastsOtherwise + node.askedOtherwise;
        int wrong = node.wrong.count();
        int wrongOtherwise = wrong - node.wrongAfterReply;
        double expected = (double) wrong / Math.max(1, after) * otherwise;
        String shows = "it alone received " + wrong + " frames wrong though nobody else talked, "
                + Words.of(node.wrongAfterReply, after) + " that came right after a reply and "
                + Words.of(wrongOtherwise, otherwise) + " others";
        Confidence confidence = wrong > FEW ? LIKELY : POSSIBLE;
        if (wrongOtherwise > 0) {
            scene.node(node, confidence, node.wrong, shows, Cause.COMMON_WIRE_LIFTED);
        } else if (expected > SEVERAL) {
            scene.node(node, confidence, node.wrong, shows, Cause.EAVESDROPPER);
        } else {
            scene.node(node, confidence, node.wrong, shows, Cause.EAVESDROPPER, Cause.COMMON_WIRE_LIFTED);
        }
        return true;
    }

    private boolean buffers(NodeEvidence node) {
        if (node.overruns.count() < FEW || scene.promise(node).losesFrames()) {
            return false;
        }
        boolean byLength = node.overruns.least() > node.longestTaken;
        boolean withRoom = node.overrunsWithRoom > 0;
        String lost = node.overruns.count() + " frames of " + node.overruns.least() + " to " + node.overruns.most()
                + " characters were lost in its buffers";
        if (byLength) {
            String shows = lost + ", and since the first of them none as long was taken";
            scene.node(node, LIKELY, node.overruns, shows, Cause.RING_OVERRUN);
        } else if (withRoom) {
            String shows = lost + ", " + node.overrunsWithRoom + " of them while its ring must have had room";
            scene.node(node, CERTAIN, node.overruns, shows, Cause.BLACKOUT);
        } else if (slow(node).count() > 0) {
            return false;
        } else if (node.overruns.count() >= 2 * node.overrunEpisodes) {
            String shows = lost + ", several in a row";
            scene.node(node, LIKELY, node.overruns, shows, Cause.LOOP_STALL, Cause.BLACKOUT);
        } else {
            String shows = lost + ", one at a time";
            scene.node(node, LIKELY, node.overruns, shows, Cause.BLACKOUT, Cause.LOOP_STALL);
        }
        return true;
    }

    private static Sightings slow(NodeEvidence node) {
        return node.late.count() >= node.slowApplied.count() ? node.late : node.slowApplied;
    }

    private boolean blocked(NodeEvidence node) {
        Sightings seen = slow(node);
        if (seen.count() == 0) {
            return false;
        }
        scene.node(
                node,
                seen.count() > FEW ? LIKELY : POSSIBLE,
                seen,
                "a " + (seen == node.late ? "reply" : "value") + " took up to " + Words.time(seen.most())
                        + ", more than its profile and what blocks it explain, " + Words.seen(seen),
                Cause.LOOP_STALL);
        return true;
    }

    private void silence(NodeEvidence node) {
        int count = node.silent.count();
        if (count < SEVERAL) {
            return;
        }
        boolean forGood = node.longestSilentRun >= Math.max(SEVERAL, count / 2);
        if (!forGood && node.overruns.count() > 0 && scene.promise(node).losesFrames()) {
            // as described, it is blocked for longer than its buffers last: a request may get lost in them now and then
            return;
        }
        scene.node(
                node,
                forGood ? LIKELY : POSSIBLE,
                node.silent,
                Words.of(count, node.asked) + " requests got no reply, " + node.longestSilentRun
                        + " in a row, and it sent nothing at all meanwhile",
                Cause.DEAD_NODE,
                Cause.BACK_FEED,
                Cause.SWAPPED_PAIR);
    }
}
