package dropline.bus.bound;

import dropline.bus.clock.BusyPeriod;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Blocks;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Profile;
import java.util.ArrayList;
import java.util.List;

/** How long a node's tasks can keep its loop, or its interrupts, from running without a pause. */
final class LongestBlock {
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
        return BusyPeriod.nanos(
                tasks.stream().mapToLong(Task::everyNanos).toArray(),
                tasks.stream().mapToLong(Task::takesNanos).toArray(),
                tasks.size());
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
