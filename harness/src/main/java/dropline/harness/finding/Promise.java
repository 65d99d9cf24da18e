package dropline.harness.finding;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Blocks;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.bus.plan.PollFloor;
import java.util.ArrayList;
import java.util.List;

/**
 * What the pit file promises of one node, so that what it merely keeps is no finding.
 *
 * @param leadNanos driver on to first start bit
 * @param tailNanos last stop bit to driver off
 * @param leastGapNanos shortest reply gap
 * @param mostGapNanos longest reply gap, everything that blocks it included
 * @param mostWaitNanos longest time from a frame heard to its values applied
 * @param mostLoopNanos longest pass of its loop
 * @param charNanos a character as its clock makes it, as a fraction of which frames are judged
 * @param answerNanos longest reply gap and reply
 * @param loopReplies whether it replies from its loop
 * @param ringChars characters that surely still fit its ring after its loop was seen running
 * @param losesFrames whether blocked interrupts or a full ring may lose frames as described
 */
record Promise(
        long leadNanos,
        long tailNanos,
        long leastGapNanos,
        long mostGapNanos,
        long mostWaitNanos,
        long mostLoopNanos,
        double charNanos,
        long answerNanos,
        boolean loopReplies,
        long ringChars,
        boolean losesFrames) {

    /** Where a busy period ends no matter what, ns. */
    private static final long LONGEST_BLOCK_NANOS = 1_000_000_000L;
    /** A gap without a stated maximum is believed to be no longer than this many of its means. */
    private static final int UNSTATED_MEANS = 40;

    private static final int LONGEST_REPLY_CHARS = 256;

    static Promise of(Pit pit, Segment segment, Node node) {
        Profile profile = node.profile();
        List<Profile.Task> tasks = tasks(node);
        long silence = segment.silenceNanos();
        long block = longestBlock(tasks, false);
        boolean loop = profile.replyFrom() == Profile.ReplyFrom.LOOP;
        long replyBlock = loop ? block : longestBlock(tasks, true);
        long gap = Math.max(silence, mostGap(profile));
        double charNanos = UartClock.exact(segment.baud()).charsNanos(segment.format(), 1000) / 1000.0;
        long most = silence + replyBlock + gap + profile.enableLeadNanos() + (loop ? profile.loopPassNanos() : 0);
        return new Promise(
                profile.enableLeadNanos(),
                profile.releaseTailNanos(),
                Math.max(silence, leastGap(segment, node)),
                most,
                silence + block + profile.loopPassNanos(),
                block + profile.loopPassNanos(),
                profile.clock(segment.baud()).charsNanos(segment.format(), 1000) / 1000.0,
                most + Math.round(longestReply(pit, segment, node) * charNanos),
                loop,
                profile.ringChars() - 1 - Math.round(profile.loopPassNanos() / charNanos),
                losesFrames(profile, tasks, charNanos));
    }

    /** A program that is run replies when it does; too soon is what the controller is not ready for. */
    private static long leastGap(Segment segment, Node node) {
        long described = node.profile().replyGap().baseNanos();
        return node.program() == null
                ? described
                : Math.min(described, segment.controller().releaseTailNanos());
    }

    private static long longestReply(Pit pit, Segment segment, Node node) {
        long shortest = PollFloor.shortestAnswerNanos(pit, segment, node);
        long gap = Math.max(segment.silenceNanos(), node.profile().replyGap().baseNanos());
        double charNanos = UartClock.exact(segment.baud()).charsNanos(segment.format(), 1);
        return Math.min(LONGEST_REPLY_CHARS, Math.round((shortest - gap) / charNanos) + 40);
    }

    private static boolean losesFrames(Profile profile, List<Profile.Task> tasks, double charNanos) {
        long off = longestBlock(tasks, true);
        long block = longestBlock(tasks, false);
        return off > profile.fifoChars() * charNanos || block > (profile.ringChars() - 1) * charNanos;
    }

    private static long mostGap(Profile profile) {
        long max = profile.replyGap().maxNanos();
        return max < Long.MAX_VALUE
                ? max
                : profile.replyGap().baseNanos()
                        + UNSTATED_MEANS * profile.replyGap().spreadNanos();
    }

    /** Everything that may run on a node beside its loop: its tasks, and the refreshes of what it shows with. */
    private static List<Profile.Task> tasks(Node node) {
        List<Profile.Task> tasks = new ArrayList<>(node.profile().tasks());
        for (Panel panel : node.panels()) {
            for (Indicator indicator : panel.indicators()) {
                if (indicator.kind().refreshes()) {
                    tasks.add(new Profile.Task(
                            indicator.name(),
                            indicator.refreshEveryNanos(),
                            indicator.refreshTakesNanos(),
                            indicator.blocks()));
                }
            }
        }
        return tasks;
    }

    /** The longest stretch in which one task follows another, as the busy period of a processor that runs them all. */
    private static long longestBlock(List<Profile.Task> tasks, boolean interruptsOnly) {
        long busy = 0;
        while (busy < LONGEST_BLOCK_NANOS) {
            long next = 0;
            for (Profile.Task task : tasks) {
                if (task.blocks() == Blocks.INTERRUPTS || (!interruptsOnly && task.blocks() == Blocks.LOOP)) {
                    long starts = Math.max(1, (busy + task.everyNanos() - 1) / task.everyNanos());
                    next += starts * task.takesNanos();
                }
            }
            if (next == busy) {
                return busy;
            }
            busy = next;
        }
        return busy;
    }
}
