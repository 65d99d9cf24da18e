package dropline.bus.bound;

import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Blocks;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Profile;
import java.util.ArrayList;
import java.util.List;

/**
 * How long a node's tasks can keep its loop, or its interrupts, from running without a pause: all start together, and
 * each again as often as its period fits in. That is the busy period of a processor (Joseph and Pandya 1986); tasks of
 * different periods do drift into each other.
 */
final class LongestBlock {
    /** In place of a time: the tasks leave no time at all. */
    static final long ALWAYS = Long.MAX_VALUE;

    private record Task(long everyNanos, long takesNanos) {}

    private LongestBlock() {}

    /** Of the loop, which whatever turns interrupts off blocks too, ns. */
    static long ofLoop(Node node) {
        return longest(node, false);
    }

    /** Of the interrupts, ns. */
    static long ofInterrupts(Node node) {
        return longest(node, true);
    }

    private static long longest(Node node, boolean interrupts) {
        List<Task> tasks = tasks(node, interrupts);
        double load = 0;
        long block = 0;
        for (Task task : tasks) {
            load += (double) task.takesNanos / task.everyNanos;
            block += task.takesNanos;
        }
        if (load >= 1) {
            return ALWAYS;
        }
        long before = 0;
        while (block != before) {
            before = block;
            block = 0;
            for (Task task : tasks) {
                block += (before + task.everyNanos - 1) / task.everyNanos * task.takesNanos;
            }
        }
        return block;
    }

    private static List<Task> tasks(Node node, boolean interrupts) {
        List<Task> tasks = new ArrayList<>();
        for (Profile.Task task : node.profile().tasks()) {
            if (counts(task.blocks(), interrupts)) {
                tasks.add(new Task(task.everyNanos(), task.takesNanos()));
            }
        }
        for (Panel panel : node.panels()) {
            for (Indicator indicator : panel.indicators()) {
                if (indicator.kind().refreshes() && counts(indicator.blocks(), interrupts)) {
                    tasks.add(new Task(indicator.refreshEveryNanos(), indicator.refreshTakesNanos()));
                }
            }
        }
        return tasks;
    }

    private static boolean counts(Blocks what, boolean interrupts) {
        return what == Blocks.INTERRUPTS || (!interrupts && what == Blocks.LOOP);
    }
}
