package dropline.bus.avr.board;

/**
 * The driver of a transceiver: what it puts on the pair, and how its being on lies against what is sent. All instants
 * are cycles. While it is off the pair rests at one.
 */
public final class Driver implements Board.Talk {
    private static final int ROOM = 64;

    /** Who sees the pair. */
    @FunctionalInterface
    interface Seen {
        /** The level turns. */
        void turns(long cycle, int level);
    }

    /** What hangs on the same pin. */
    @FunctionalInterface
    interface Gate {
        void turns(long cycle);
    }

    private final boolean isAutomatic;
    private final Seen seen;
    private final Gate gate;
    private final long[] edges = new long[ROOM];
    private int first;
    private int count;
    private int sent = 1;
    private int level = 1;
    private boolean isOn;
    private long onSince;
    private long lastEnd;
    private boolean hasSent;
    private long transmissions;
    private long leastLead = Long.MAX_VALUE;
    private long leastTail = Long.MAX_VALUE;
    private long mostTail = Long.MIN_VALUE;
    private int unsent;

    /**
     * @param isAutomatic whether it is on by itself whenever something is sent
     * @param gate the receiver, which is off while it is on
     */
    Driver(boolean isAutomatic, Seen seen, Gate gate) {
        this.isAutomatic = isAutomatic;
        this.seen = seen;
        this.gate = gate;
        isOn = isAutomatic;
    }

    @Override
    public void begins(int bits, int length, long startCycle, int bitCycles) {
        reach(startCycle);
        int before = 1;
        for (int i = 0; i < length; i++) {
            int bit = bits >> i & 1;
            if (bit != before) {
                add(startCycle + (long) i * bitCycles);
                before = bit;
            }
        }
        lastEnd = startCycle + (long) length * bitCycles;
        if (!isOn) {
            unsent++;
        } else if (!hasSent) {
            transmissions++;
            leastLead = Math.min(leastLead, startCycle - onSince);
        }
        hasSent = true;
    }

    private void add(long cycle) {
        if (count == ROOM) {
            throw new IllegalStateException("edges must be handed on in time: count=" + count);
        }
        edges[(first + count++) % ROOM] = cycle;
    }

    @Override
    public void enabled(boolean isWanted, long cycle) {
        reach(cycle);
        if (isWanted) {
            onSince = cycle;
            hasSent = false;
        } else if (hasSent) {
            leastTail = Math.min(leastTail, cycle - lastEnd);
            mostTail = Math.max(mostTail, cycle - lastEnd);
        }
        isOn = isWanted;
        show(cycle);
        gate.turns(cycle);
    }

    /** All that happens by a cycle is known. */
    void reach(long cycle) {
        while (count > 0 && edges[first] <= cycle) {
            long at = edges[first];
            first = (first + 1) % ROOM;
            count--;
            sent ^= 1;
            show(at);
        }
    }

    private void show(long cycle) {
        int now = isOn ? sent : 1;
        if (now != level) {
            level = now;
            seen.turns(cycle, level);
        }
    }

    /** Whether it is on by itself whenever something is sent. */
    public boolean isAutomatic() {
        return isAutomatic;
    }

    /** How often it was turned on and something sent. */
    public long transmissions() {
        return transmissions;
    }

    /** Driver on to first start bit, the shortest of all, cycles. */
    public long leastLead() {
        return leastLead;
    }

    /** Last stop bit to driver off, the shortest of all, cycles; below 0 where it cut one short. */
    public long leastTail() {
        return leastTail;
    }

    /** Last stop bit to driver off, the longest of all, cycles. */
    public long mostTail() {
        return mostTail;
    }

    /** Characters that were begun while it was off. */
    public int unsent() {
        return unsent;
    }
}
