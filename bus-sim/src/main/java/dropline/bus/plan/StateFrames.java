package dropline.bus.plan;

import dropline.protocol.Destination;

/**
 * Frames that carry state.
 *
 * @param count how many
 * @param chars their characters, beyond those that were not to be counted
 */
record StateFrames(int count, int chars) {

    /**
     * As few as take all of the slots that wait.
     *
     * @param pending one bit for each slot that waits; all are cleared
     * @param plain characters of each that are not counted
     */
    static StateFrames of(Destination wire, int slots, long[] pending, int plain) {
        int[] picked = new int[slots];
        int count = 0;
        int chars = 0;
        int taken = wire.pick(pending, 0, picked);
        while (taken > 0) {
            count++;
            chars += wire.requestChars(picked, taken) - plain;
            for (int i = 0; i < taken; i++) {
                pending[picked[i] >> 6] &= ~(1L << picked[i]);
            }
            taken = wire.pick(pending, 0, picked);
        }
        return new StateFrames(count, chars);
    }

    /** The same for the first so many. */
    static StateFrames ofFirst(Destination wire, int slots, int changes, int plain) {
        long[] pending = new long[slots / 64 + 1];
        for (int i = 0; i < Math.min(slots, changes); i++) {
            pending[i >> 6] |= 1L << i;
        }
        return of(wire, slots, pending, plain);
    }
}
