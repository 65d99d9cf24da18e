package dropline.bus.avr.core;

/** The longest stretch in which interrupts were off, and where it began. */
public final class Stretches {
    private long since;
    private int from;
    private boolean isOff;
    private long longest;
    private int longestFrom;

    void off(long cycle, int address) {
        if (!isOff) {
            isOff = true;
            since = cycle;
            from = address;
        }
    }

    void on(long cycle) {
        if (isOff && cycle - since > longest) {
            longest = cycle - since;
            longestFrom = from;
        }
        isOff = false;
    }

    void forget() {
        isOff = false;
    }

    /** How long, cycles. */
    public long longest() {
        return longest;
    }

    /** Where in the program interrupts went off for so long, in bytes: the instruction, or the vector. */
    public int fromByteAddress() {
        return 2 * longestFrom;
    }
}
