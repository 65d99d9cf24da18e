package dropline.bus.clock;

/**
 * The longest time for which periodic tasks can leave a processor none: all start together, and each again as often as
 * its period fits in (Joseph and Pandya 1986). Tasks of different periods do drift into each other.
 */
public final class BusyPeriod {
    /** In place of a time: the tasks leave no time at all. */
    public static final long ALWAYS = Long.MAX_VALUE;

    private BusyPeriod() {}

    /**
     * Of the first so many tasks, ns, or {@link #ALWAYS}.
     *
     * @param everyNanos each task's period, ns, above 0
     * @param takesNanos how long each takes, ns
     */
    public static long nanos(long[] everyNanos, long[] takesNanos, int count) {
        double load = 0;
        long busy = 0;
        for (int i = 0; i < count; i++) {
            load += (double) takesNanos[i] / everyNanos[i];
            busy += takesNanos[i];
        }
        if (load >= 1) {
            return ALWAYS;
        }
        long before = -1;
        while (busy != before) {
            before = busy;
            busy = 0;
            for (int i = 0; i < count; i++) {
                busy += (before + everyNanos[i] - 1) / everyNanos[i] * takesNanos[i];
            }
        }
        return busy;
    }
}
