package dropline.bus.controller;

import dropline.bus.pit.Controller;
import dropline.bus.pit.Node;
import java.util.List;

/**
 * Weighted round robin with back-off: whose turn it is. A node of weight w is polled w times a cycle, spread over it.
 * One that gave no answer several times in a row is left alone for a while, so that an unplugged panel does not slow
 * the rest.
 */
public final class PollPlan {
    private final int[] turns;
    private final int[] failures;
    private final long[] leftAloneUntil;
    private final Controller controller;
    private int next;
    private int cycle;
    private boolean roundBegins = true;

    /** Takes the nodes in the order in which they are polled. */
    public PollPlan(List<Node> nodes, Controller controller) {
        this.controller = controller;
        failures = new int[nodes.size()];
        leftAloneUntil = new long[nodes.size()];
        turns = turns(nodes);
    }

    /** The order of polls in one round, as positions in the list of nodes. */
    public static int[] turns(List<Node> nodes) {
        int rounds = nodes.stream().mapToInt(Node::weight).max().orElse(1);
        int[] turns = new int[nodes.stream().mapToInt(Node::weight).sum()];
        int count = 0;
        for (int round = 0; round < rounds; round++) {
            for (int n = 0; n < nodes.size(); n++) {
                int weight = nodes.get(n).weight();
                if ((round + 1) * weight / rounds > round * weight / rounds) {
                    turns[count++] = n;
                }
            }
        }
        return turns;
    }

    /** The node whose turn it is, or -1 if all are left alone for now. */
    public int turn(long atNanos) {
        for (int tried = 0; tried < turns.length; tried++) {
            if (leftAloneUntil[turns[next]] <= atNanos) {
                return turns[next];
            }
            pass();
        }
        return -1;
    }

    /** Moves on to the next turn. */
    public void pass() {
        next++;
        if (next == turns.length) {
            next = 0;
            roundBegins = true;
        }
    }

    /** If the turn now taken begins a round, its number from 1; else 0. Answers once a round. */
    public int roundBegins() {
        if (!roundBegins) {
            return 0;
        }
        roundBegins = false;
        return ++cycle;
    }

    /** Notes an answer. */
    public void answered(int node) {
        failures[node] = 0;
    }

    /** Notes a transaction given up; returns until when the node is left alone, or 0. */
    public long gaveUp(int node, long atNanos) {
        failures[node]++;
        if (controller.backOffAfter() == 0 || failures[node] < controller.backOffAfter()) {
            return 0;
        }
        leftAloneUntil[node] = atNanos + controller.backOffNanos();
        return leftAloneUntil[node];
    }

    /** When the first node that is left alone is polled again. */
    public long firstBackNanos() {
        long first = Long.MAX_VALUE;
        for (long until : leftAloneUntil) {
            first = Math.min(first, until);
        }
        return first;
    }
}
