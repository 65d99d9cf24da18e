package dropline.bus.run;

import dropline.bus.controller.StateQueue;
import dropline.bus.wire.Frame;

/** What the last broadcasts carried, so that a node that missed some is sent it again. Remembers 64 of them. */
final class SentBroadcasts {
    private static final int KEPT = 64;

    private final int[][] picked;
    private final int[] count = new int[KEPT];
    private int newest;

    /** @param slots how many values a broadcast carries at most */
    SentBroadcasts(int slots) {
        picked = new int[KEPT][slots];
    }

    void remember(Frame broadcast) {
        newest = broadcast.transaction;
        int at = newest % KEPT;
        count[at] = broadcast.count;
        System.arraycopy(broadcast.picked, 0, picked[at], 0, broadcast.count);
    }

    /**
     * Marks for sending again what a node shows of every broadcast after the last one it has.
     *
     * @param lastHad below 1 where that was none, or one of a run before this
     */
    void markMissed(int lastHad, boolean[] shown, StateQueue queue) {
        int first = Math.max(1, Math.max(lastHad + 1, newest - KEPT + 1));
        for (int number = first; number <= newest; number++) {
            int at = number % KEPT;
            for (int i = 0; i < count[at]; i++) {
                if (shown[picked[at][i]]) {
                    queue.mark(picked[at][i]);
                }
            }
        }
    }
}
