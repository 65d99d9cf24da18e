package dropline.harness.finding;

import static dropline.harness.finding.Confidence.CERTAIN;
import static dropline.harness.finding.Confidence.LIKELY;
import static dropline.harness.finding.Confidence.POSSIBLE;

/** What is wrong with a segment as a whole, all tiers seen; then with its nodes. */
final class BusRules {
    private static final int FEW = 2;
    private static final int SEVERAL = 5;
    private static final double MOST = 0.6;

    private final Scene scene;
    private final BusEvidence bus;

    BusRules(Scene scene) {
        this.scene = scene;
        this.bus = scene.bus;
    }

    void judge() {
        host();
        boolean explained = stuckDriver() || brownOut();
        if (explained) {
            return;
        }
        adapter();
        NodeRules nodes = new NodeRules(scene);
        nodes.whatTheySend();
        if (scene.findings().stream().anyMatch(finding -> finding.subject() == Finding.Subject.NODE)) {
            nodes.whatTheyMissThough();
        } else if (!echo() && !missingBias() && !lostState() && !noise()) {
            nodes.whatTheyMiss();
        }
    }

    private void host() {
        if (bus.noState.count() > 0) {
            scene.host(
                    bus.noState,
                    "for " + Words.time(bus.noState.most()) + " from " + Words.time(bus.noState.firstNanos())
                            + " nothing came, though there was something to tell",
                    Cause.SILENT_HOST);
        }
    }

    private boolean stuckDriver() {
        boolean any = false;
        for (NodeEvidence node : scene.nodes) {
            if (node.held.count() > 0) {
                scene.node(
                        node,
                        CERTAIN,
                        node.held,
                        "enabled and idle for " + Words.time(node.held.most()) + " from "
                                + Words.time(node.held.firstNanos()) + "; meanwhile "
                                + Words.of(bus.failures.count(), bus.polls) + " polls of the segment failed",
                        Cause.STUCK_DRIVER);
                any = true;
            }
        }
        return any;
    }

    private boolean brownOut() {
        int count = scene.nodes.size();
        if (bus.restartsTogether < FEW || bus.restartsTogether < (2 * count + 2) / 3) {
            return false;
        }
        Sightings seen = new Sightings();
        scene.nodes.forEach(node -> {
            if (node.resets.count() > 0) {
                seen.add(node.resets.firstNanos(), 1);
            }
        });
        scene.segment(
                CERTAIN,
                seen,
                "its nodes lost their supply together: " + bus.restartsTogether + " of " + count
                        + " restarted within a tenth of a second, first at " + Words.time(seen.firstNanos()),
                Cause.BROWN_OUT);
        return true;
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

    private boolean echo() {
        Sightings wrong = bus.wrongReplies;
        boolean fromSeveral = wrong.least() != wrong.most();
        boolean nodesHear = bus.wrong.count() == wrong.count();
        if (bus.echoes.count() > FEW) {
            scene.segment(
                    CERTAIN,
                    bus.echoes,
                    "the controller received its own frames, " + Words.seen(bus.echoes),
                    Cause.ECHO);
            return true;
        }
        if (wrong.count() <= FEW || !fromSeveral || !nodesHear || bus.answersSinceWrong > wrong.count() / 50) {
            return false;
        }
        scene.segment(
                LIKELY,
                wrong,
                "nodes hear every request and reply, and the controller takes no reply at all from "
                        + Words.time(wrong.firstNanos()) + " on: " + wrong.count() + " lost behind its own frames",
                Cause.ECHO);
        return true;
    }

    private boolean missingBias() {
        long receivers =
                scene.nodes.stream().filter(node -> node.phantoms.count() > 0).count();
        boolean everywhere = receivers >= Math.max(1, scene.nodes.size() / 2);
        boolean onlyWhileIdle = bus.wrongWithoutPhantom <= bus.phantoms.count() / 9;
        if (!scene.segment.biased() || !everywhere || !onlyWhileIdle || bus.phantoms.count() < SEVERAL) {
            return false;
        }
        scene.segment(
                LIKELY,
                bus.phantoms,
                bus.phantoms.sum() + " characters that nobody sent, at " + receivers + " of " + scene.nodes.size()
                        + " nodes; frames suffered only where such characters came before them",
                Cause.MISSING_BIAS);
        return true;
    }

    private boolean lostState() {
        int lost = bus.stateFramesLost.count();
        boolean onlyState = bus.plainFramesLost.count() == 0
                && bus.wrongReplies.count() == 0
                && bus.phantoms.count() == 0
                && bus.stateFramesLost.least() != bus.stateFramesLost.most();
        boolean byAll = bus.wrong.count() > MOST * lost * scene.nodes.size();
        if (lost < FEW || bus.wrongReplies.count() + bus.phantoms.count() + bus.plainFramesLost.count() > 0) {
            return false;
        }
        if (!onlyState && !byAll) {
            return false;
        }
        scene.segment(
                LIKELY,
                bus.stateFramesLost,
                Words.of(lost, bus.stateFrames)
                        + " state frames were received by nobody, while frames without state were received",
                Cause.LOST_STATE_FRAME);
        return true;
    }

    private boolean noise() {
        long receivers = scene.nodes.stream()
                .filter(node -> node.wrong.count() + node.phantoms.count() > 0)
                .count();
        int spoilt = bus.wrong.count() + bus.phantoms.count();
        boolean replies = bus.wrongReplies.count() > 0;
        boolean onlyItsOwn = !replies || bus.wrongReplies.least() == bus.wrongReplies.most();
        boolean byOne = receivers <= 1 && onlyItsOwn;
        if (spoilt < FEW || receivers + (replies ? 1 : 0) < FEW || byOne) {
            return false;
        }
        scene.segment(
                spoilt > 5 ? LIKELY : POSSIBLE,
                bus.wrong.count() >= bus.phantoms.count() ? bus.wrong : bus.phantoms,
                bus.wrong.count() + " frames were received wrong and " + bus.phantoms.sum()
                        + " characters that nobody sent were received, by " + receivers + " of " + scene.nodes.size()
                        + " nodes, though no two talked at once",
                Cause.NOISE_BURST);
        return true;
    }
}
