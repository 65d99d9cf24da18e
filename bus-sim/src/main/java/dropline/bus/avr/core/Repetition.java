package dropline.bus.avr.core;

import java.util.Arrays;

/**
 * Notices that a program goes round and round without any change: the same place, registers, stack and memory as some
 * jumps before, and nothing done in between that reaches beyond memory. Looks back to one jump at a time, to ever older
 * ones (R. P. Brent, "An improved Monte Carlo factorization algorithm", BIT 20, 1980, section 2).
 */
final class Repetition {
    private static final int FEW = 2;

    private final byte[] registers = new byte[32];
    private int place = -1;
    private int sp;
    private int sreg;
    private long contents;
    private long since;
    private int jumps;
    private int limit = FEW;

    /** What follows cannot be told from what was. */
    void forget() {
        place = -1;
        jumps = 0;
        limit = FEW;
    }

    /** Whether the processor, which has just jumped back, is where it was, with all as it was. */
    boolean isAt(DataSpace cpu, int target) {
        if (target == place
                && cpu.contents() == contents
                && cpu.sp == sp
                && cpu.sreg == sreg
                && Arrays.equals(cpu.bytes, 0, 32, registers, 0, 32)) {
            return true;
        }
        if (++jumps >= limit) {
            jumps = 0;
            limit *= 2;
            place = target;
            contents = cpu.contents();
            sp = cpu.sp;
            sreg = cpu.sreg;
            since = cpu.cycles;
            System.arraycopy(cpu.bytes, 0, registers, 0, 32);
        }
        return false;
    }

    /** It is there once more. */
    void goesOn(long cycle) {
        since = cycle;
    }

    /** How long one time round takes, cycles. */
    long round(long cycle) {
        return cycle - since;
    }
}
