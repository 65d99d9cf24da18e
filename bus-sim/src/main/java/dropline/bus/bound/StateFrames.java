package dropline.bus.bound;

import dropline.protocol.Destination;
import dropline.protocol.Protocol;
import dropline.protocol.modbus.ModbusRtu;

/**
 * How the values for one destination go out when all of them wait. The queue hands them out in turn, so that a value
 * waits for no more than one round of all others, however often these change.
 *
 * @param slots values there are
 * @param frames frames that one round takes
 * @param chars characters of all frames of a round
 * @param longestChars characters of the longest frame
 * @param singleChars characters of a round that carries one value a frame
 * @param longestSingleChars characters of the longest of those
 * @param areFull whether a frame that leaves a value behind has no room for it; where not, it is a run of neighbours,
 *     and values that arrive one by one may each take a frame of their own
 */
record StateFrames(
        int slots,
        int frames,
        long chars,
        int longestChars,
        long singleChars,
        int longestSingleChars,
        boolean areFull) {

    static StateFrames of(Protocol protocol, Destination wire, int slots) {
        long[] pending = new long[slots / 64 + 1];
        for (int i = 0; i < slots; i++) {
            pending[i >> 6] |= 1L << i;
        }
        int[] picked = new int[slots];
        int frames = 0;
        long chars = 0;
        int from = 0;
        for (int count = wire.pick(pending, from, picked); count > 0; count = wire.pick(pending, from, picked)) {
            frames++;
            chars += wire.requestChars(picked, count);
            for (int i = 0; i < count; i++) {
                pending[picked[i] >> 6] &= ~(1L << picked[i]);
            }
            from = (picked[count - 1] + 1) % slots;
        }
        long singles = 0;
        int longestSingle = 0;
        for (int slot = 0; slot < slots && frames > 0; slot++) {
            pending[slot >> 6] |= 1L << slot;
            int single = wire.requestChars(picked, wire.pick(pending, slot, picked));
            pending[slot >> 6] &= ~(1L << slot);
            singles += single;
            longestSingle = Math.max(longestSingle, single);
        }
        return new StateFrames(
                slots,
                frames,
                chars,
                wire.longestRequestChars(),
                singles,
                longestSingle,
                !(protocol instanceof ModbusRtu));
    }

    /**
     * Frames that may go out before the one with a value that waits.
     *
     * @param arrivals times that further values come to wait in the meantime, at most
     */
    long ahead(long arrivals) {
        if (slots <= 1 || (areFull && frames <= 1)) {
            return 0;
        }
        return areFull ? frames : Math.min(slots - 1L, frames + arrivals);
    }

    boolean isNone() {
        return slots > 0 && frames == 0;
    }
}
