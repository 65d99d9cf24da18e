package dropline.bus.bound;

import dropline.bus.pit.Controller;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How long the polls of a segment take, at most, in the order in which they are made. */
final class PollTimes {

    /** So many tries, which together take so long, ns. */
    record Span(long nanos, long tries) {}

    private final int[] turns;
    private final long[] turnNanos;
    private final long[] tries;
    private final long longestTryNanos;
    private final Span round;

    /**
     * @param obstacles of each node; null where every frame to and from it surely arrives
     * @param turns the order of polls in one round
     */
    PollTimes(Timing timing, List<NodeTimes> nodes, List<@Nullable Obstacle> obstacles, int[] turns) {
        this.turns = turns;
        turnNanos = new long[nodes.size()];
        tries = new long[nodes.size()];
        Controller controller = timing.segment().controller();
        long longest = 0;
        boolean anySound = false;
        for (int n = 0; n < turnNanos.length; n++) {
            NodeTimes node = nodes.get(n);
            boolean sound = obstacles.get(n) == null;
            boolean host = controller.kind() == Controller.Kind.HOST;
            long request = timing.frame(node.requestChars());
            long answered = request + timing.answeredNanos(node.answerNanos() + (host ? timing.receiveNanos() : 0));
            long once = sound ? answered : Math.max(answered, request + timing.unansweredNanos());
            tries[n] = sound ? 1 : controller.retries() + 1L;
            turnNanos[n] = tries[n] * once;
            longest = Math.max(longest, once);
            anySound |= sound;
        }
        longestTryNanos = longest;
        boolean pauses = !anySound && controller.backOffAfter() > 0;
        long pause = pauses ? controller.backOffNanos() + controller.gapNanos() : 0;
        Span all = span(0, turns.length);
        round = new Span(all.nanos + timing.jitterNanos() + pause, all.tries + (pauses ? 1 : 0));
    }

    /** Longest time of one try to poll a node, to the next frame, ns. */
    long longestTryNanos() {
        return longestTryNanos;
    }

    /** Longest time of one poll of a node with all its tries, to the next frame, ns. */
    long turnNanos(int node) {
        return turnNanos[node];
    }

    /** A whole round, from its first request to that of the next. */
    Span round() {
        return round;
    }

    /** From one poll of a node to the poll of it that comes so many times later, at most. */
    Span between(int node, long times) {
        Span longest = new Span(0, 0);
        for (int i = 0; i < turns.length; i++) {
            if (turns[i] == node) {
                Span span = span(i, turnsUntil(i, times));
                longest = new Span(Math.max(longest.nanos, span.nanos), Math.max(longest.tries, span.tries));
            }
        }
        return longest;
    }

    private long turnsUntil(int from, long times) {
        long count = 0;
        long left = times;
        while (left > 0) {
            count++;
            left -= turns[(int) ((from + count) % turns.length)] == turns[from] ? 1 : 0;
        }
        return count;
    }

    private Span span(int from, long count) {
        long nanos = 0;
        long sum = 0;
        for (long i = from; i < from + count; i++) {
            int node = turns[(int) (i % turns.length)];
            nanos += turnNanos[node];
            sum += tries[node];
        }
        return new Span(nanos, sum);
    }
}
