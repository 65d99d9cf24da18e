package dropline.scenarios.yardstick;

/** What waits to be sent: the lamps that have changed, taken in turn. */
final class Waiting {
    private static final long ALL = (1L << ReferenceBus.LAMPS) - 1;

    /** The lamps of the frame taken last. */
    final int[] picked = new int[ReferenceBus.VALUES_IN_A_FRAME];

    private long pending;
    private int next;
    private int from;

    boolean isEmpty() {
        return pending == 0;
    }

    /** The next state has come: the next lamps in turn have changed. */
    void change(long atNanos, Figures figures) {
        for (int i = 0; i < ReferenceBus.CHANGES; i++) {
            pending |= 1L << next;
            figures.changed(next, atNanos);
            next = next + 1 == ReferenceBus.LAMPS ? 0 : next + 1;
        }
    }

    /** Takes as many as a frame carries; tells how many. */
    int take() {
        int count = 0;
        while (pending != 0 && count < picked.length) {
            long later = pending & (ALL << from) & ALL;
            int lamp = Long.numberOfTrailingZeros(later != 0 ? later : pending);
            pending &= ~(1L << lamp);
            picked[count++] = lamp;
            from = lamp + 1 == ReferenceBus.LAMPS ? 0 : lamp + 1;
        }
        return count;
    }
}
