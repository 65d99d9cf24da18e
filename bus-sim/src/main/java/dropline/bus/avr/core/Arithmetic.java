package dropline.bus.avr.core;

/**
 * The 32 registers, the status register, and what is computed with them (DS40002198, chapter 5: the Boolean formulas of
 * each instruction's flags).
 */
abstract class Arithmetic {
    static final int C = 1;
    static final int Z = 2;
    static final int N = 4;
    static final int V = 8;
    static final int S = 16;
    static final int H = 32;
    static final int T = 64;
    static final int I = 128;

    private static final int LOGIC_KEEPS = I | T | H | C;
    private static final int KEEPS = I | T;

    /** The data space; its first 32 bytes are the registers. */
    final byte[] bytes;

    int sreg;
    long cycles;

    Arithmetic(int size) {
        bytes = new byte[size];
    }

    final int pair(int low) {
        return bytes[low] & 0xFF | (bytes[low + 1] & 0xFF) << 8;
    }

    final void setPair(int low, int value) {
        bytes[low] = (byte) value;
        bytes[low + 1] = (byte) (value >> 8);
    }

    /** Two registers. */
    final void pairs(int op, int d, int r) {
        int a = bytes[d] & 0xFF;
        int b = bytes[r] & 0xFF;
        cycles++;
        switch (op) {
            case Op.ADD -> bytes[d] = (byte) added(a, b, a + b);
            case Op.ADC -> bytes[d] = (byte) added(a, b, a + b + (sreg & C));
            case Op.SUB -> bytes[d] = (byte) subtracted(a, b, a - b);
            case Op.SBC -> bytes[d] = (byte) carriedOn(a, b, a - b - (sreg & C));
            case Op.AND -> bytes[d] = (byte) logic(a & b);
            case Op.OR -> bytes[d] = (byte) logic(a | b);
            case Op.EOR -> bytes[d] = (byte) logic(a ^ b);
            case Op.CP -> subtracted(a, b, a - b);
            case Op.CPC -> carriedOn(a, b, a - b - (sreg & C));
            case Op.MOV -> bytes[d] = (byte) b;
            case Op.MOVW -> setPair(d, pair(r));
            case Op.MUL -> multiplied(a * b, 0);
            case Op.MULS -> multiplied((byte) a * (byte) b, 0);
            case Op.MULSU -> multiplied((byte) a * b, 0);
            case Op.FMUL -> multiplied(a * b, 1);
            default -> multiplied((byte) a * (byte) b, 1);
        }
    }

    /** One register, with a constant or without. */
    final void singles(int op, int d, int k) {
        int a = bytes[d] & 0xFF;
        cycles++;
        switch (op) {
            case Op.SUBI -> bytes[d] = (byte) subtracted(a, k, a - k);
            case Op.SBCI -> bytes[d] = (byte) carriedOn(a, k, a - k - (sreg & C));
            case Op.ANDI -> bytes[d] = (byte) logic(a & k);
            case Op.ORI -> bytes[d] = (byte) logic(a | k);
            case Op.CPI -> subtracted(a, k, a - k);
            case Op.LDI -> bytes[d] = (byte) k;
            case Op.ADIW -> addWord(d, k);
            case Op.SBIW -> subtractWord(d, k);
            case Op.COM -> {
                bytes[d] = (byte) logic(~a & 0xFF);
                sreg |= C;
            }
            case Op.NEG -> bytes[d] = (byte) subtracted(0, a, -a);
            case Op.INC -> bytes[d] = (byte) stepped(a + 1 & 0xFF, a == 0x7F);
            case Op.DEC -> bytes[d] = (byte) stepped(a - 1 & 0xFF, a == 0x80);
            case Op.ASR -> bytes[d] = (byte) shifted(a, a >> 1 | a & 0x80);
            case Op.LSR -> bytes[d] = (byte) shifted(a, a >> 1);
            case Op.ROR -> bytes[d] = (byte) shifted(a, a >> 1 | (sreg & C) << 7);
            default -> bytes[d] = (byte) (a >> 4 | a << 4);
        }
    }

    /** FMULSU, all but one of its cycles. */
    final void fractionalOfSigns(int d, int r) {
        multiplied(bytes[d] * (bytes[r] & 0xFF), 1);
    }

    private int added(int a, int b, int sum) {
        int r = sum & 0xFF;
        int carries = a & b | (a | b) & ~r;
        int overflow = a & b & ~r | ~(a | b) & r;
        flags(r, carries, overflow, r == 0 ? Z : 0);
        return r;
    }

    private int subtracted(int a, int b, int difference) {
        int r = difference & 0xFF;
        int borrows = ~a & b | (~a | b) & r;
        int overflow = a & ~b & ~r | ~a & b & r;
        flags(r, borrows, overflow, r == 0 ? Z : 0);
        return r;
    }

    /** As a subtraction, of a number's next byte: zero only if it was so far. */
    private int carriedOn(int a, int b, int difference) {
        int zero = (difference & 0xFF) == 0 ? sreg & Z : 0;
        int r = subtracted(a, b, difference);
        sreg = sreg & ~Z | zero;
        return r;
    }

    private void flags(int r, int carries, int overflow, int zero) {
        int n = r >> 7;
        int v = overflow >> 7 & 1;
        sreg = sreg & KEEPS | carries >> 7 & 1 | zero | n << 2 | v << 3 | (n ^ v) << 4 | (carries & 8) << 2;
    }

    private int logic(int r) {
        int n = r >> 7;
        sreg = sreg & LOGIC_KEEPS | (r == 0 ? Z : 0) | n << 2 | n << 4;
        return r;
    }

    private int stepped(int r, boolean overflow) {
        int n = r >> 7;
        int v = overflow ? 1 : 0;
        sreg = sreg & LOGIC_KEEPS | (r == 0 ? Z : 0) | n << 2 | v << 3 | (n ^ v) << 4;
        return r;
    }

    private int shifted(int a, int r) {
        int n = r >> 7;
        int c = a & 1;
        sreg = sreg & (I | T | H) | c | (r == 0 ? Z : 0) | n << 2 | (n ^ c) << 3 | c << 4;
        return r;
    }

    private void multiplied(int product, int shift) {
        cycles++;
        int r = product << shift & 0xFFFF;
        setPair(0, r);
        sreg = sreg & ~(C | Z) | product >> 15 & 1 | (r == 0 ? Z : 0);
    }

    private void addWord(int d, int k) {
        int a = pair(d);
        int r = a + k & 0xFFFF;
        wordFlags(r, ~a & r, a & ~r);
        setPair(d, r);
    }

    private void subtractWord(int d, int k) {
        int a = pair(d);
        int r = a - k & 0xFFFF;
        wordFlags(r, a & ~r, ~a & r);
        setPair(d, r);
    }

    private void wordFlags(int r, int overflow, int carry) {
        cycles++;
        int n = r >> 15;
        int v = overflow >> 15 & 1;
        sreg = sreg & (I | T | H) | carry >> 15 & 1 | (r == 0 ? Z : 0) | n << 2 | v << 3 | (n ^ v) << 4;
    }
}
