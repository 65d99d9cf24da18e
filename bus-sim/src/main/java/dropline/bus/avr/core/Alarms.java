package dropline.bus.avr.core;

import java.util.Arrays;

/** Who is due when: a cycle for each, and the soonest of them. */
final class Alarms {
    static final long NEVER = Long.MAX_VALUE;

    private Timed[] who = {};
    private long[] due = {};
    private long next = NEVER;

    int add(Timed timed) {
        who = Arrays.copyOf(who, who.length + 1);
        due = Arrays.copyOf(due, due.length + 1);
        who[who.length - 1] = timed;
        due[due.length - 1] = NEVER;
        return who.length - 1;
    }

    long next() {
        return next;
    }

    void set(int number, long cycle) {
        due[number] = cycle;
        next = NEVER;
        for (long one : due) {
            next = Math.min(next, one);
        }
    }

    /** Lets all happen that is due by a cycle, the soonest first. */
    void ring(long cycle) {
        while (next <= cycle) {
            int first = 0;
            while (due[first] != next) {
                first++;
            }
            long at = due[first];
            set(first, NEVER);
            who[first].happen(at);
        }
    }
}
