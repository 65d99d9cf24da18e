package dropline.bus.avr.core;

/**
 * What the words of a program mean (Microchip DS40002198, "AVR Instruction Set Manual", the encodings of its chapter
 * 5). An instruction becomes one int, {@code operation | a << 8 | b << 16}, and a second one for a constant, an address
 * or the place a jump leads to.
 */
final class Decoder {
    private static final int[] LOADS = new int[16];
    private static final int[] STORES = new int[16];
    private static final int[] SINGLES = new int[16];

    static {
        java.util.Arrays.fill(LOADS, Op.RESERVED);
        java.util.Arrays.fill(STORES, Op.RESERVED);
        java.util.Arrays.fill(SINGLES, Op.RESERVED);
        int[] loads = {
            0x0,
            Op.LDS,
            0x1,
            Op.LD_Z_INC,
            0x2,
            Op.LD_Z_DEC,
            0x4,
            Op.LPM,
            0x5,
            Op.LPM_INC,
            0x6,
            Op.ELPM,
            0x7,
            Op.ELPM_INC,
            0x9,
            Op.LD_Y_INC,
            0xA,
            Op.LD_Y_DEC,
            0xC,
            Op.LD_X,
            0xD,
            Op.LD_X_INC,
            0xE,
            Op.LD_X_DEC,
            0xF,
            Op.POP
        };
        int[] stores = {
            0x0,
            Op.STS,
            0x1,
            Op.ST_Z_INC,
            0x2,
            Op.ST_Z_DEC,
            0x9,
            Op.ST_Y_INC,
            0xA,
            Op.ST_Y_DEC,
            0xC,
            Op.ST_X,
            0xD,
            Op.ST_X_INC,
            0xE,
            Op.ST_X_DEC,
            0xF,
            Op.PUSH
        };
        int[] singles = {
            0x0, Op.COM, 0x1, Op.NEG, 0x2, Op.SWAP, 0x3, Op.INC, 0x5, Op.ASR, 0x6, Op.LSR, 0x7, Op.ROR, 0xA, Op.DEC
        };
        fill(LOADS, loads);
        fill(STORES, stores);
        fill(SINGLES, singles);
    }

    private Decoder() {}

    private static void fill(int[] table, int[] pairs) {
        for (int i = 0; i < pairs.length; i += 2) {
            table[pairs[i]] = pairs[i + 1];
        }
    }

    /** Whether an instruction has a second word: LDS, STS, JMP, CALL. */
    static boolean isLong(int word) {
        return (word & 0xFC0F) == 0x9000 || (word & 0xFE0C) == 0x940C;
    }

    /** The operation with its registers, bit or I/O address. */
    static int operation(int word) {
        int d = word >> 4 & 31;
        int r = word & 15 | word >> 5 & 16;
        int high = 16 + (word >> 4 & 15);
        return switch (word >> 12) {
            case 0x0, 0x1, 0x2 -> pairs(word, d, r);
            case 0x3 -> of(Op.CPI, high, 0);
            case 0x4 -> of(Op.SBCI, high, 0);
            case 0x5 -> of(Op.SUBI, high, 0);
            case 0x6 -> of(Op.ORI, high, 0);
            case 0x7 -> of(Op.ANDI, high, 0);
            case 0x8, 0xA -> displaced(word, d);
            case 0x9 -> nine(word, d, r);
            case 0xB -> of((word & 0x0800) == 0 ? Op.IN : Op.OUT, d, word & 15 | word >> 5 & 0x30);
            case 0xC -> of(Op.RJMP, 0, 0);
            case 0xD -> of(Op.RCALL, 0, 0);
            case 0xE -> of(Op.LDI, high, 0);
            default -> bits(word, d);
        };
    }

    /** What it needs beside that: a constant, a displacement, the word address a jump or skip leads to. */
    static int argument(int word, int next, int address, int mask) {
        return switch (word >> 12) {
            case 0x3, 0x4, 0x5, 0x6, 0x7, 0xE -> word & 15 | word >> 4 & 0xF0;
            case 0x8, 0xA -> word & 7 | word >> 7 & 0x18 | word >> 8 & 0x20;
            case 0xC, 0xD -> address + 1 + ((word & 0x0FFF) << 20 >> 20) & mask;
            case 0x0, 0x1 -> skipped(next, address, mask);
            case 0x9 -> nineArgument(word, next, address, mask);
            case 0xF ->
                word < 0xF800 ? address + 1 + ((word >> 3 & 0x7F) << 25 >> 25) & mask : skipped(next, address, mask);
            default -> 0;
        };
    }

    private static int nineArgument(int word, int next, int address, int mask) {
        if ((word & 0xFE0C) == 0x940C) {
            return ((word >> 3 & 0x3E | word & 1) << 16 | next) & mask;
        }
        if ((word & 0xFC0F) == 0x9000) {
            return next;
        }
        if ((word & 0xFE00) == 0x9600) {
            return word & 15 | word >> 2 & 0x30;
        }
        return skipped(next, address, mask);
    }

    /** Where a skip over the next instruction leads. */
    private static int skipped(int next, int address, int mask) {
        return address + (isLong(next) ? 3 : 2) & mask;
    }

    private static int of(int operation, int a, int b) {
        return operation | a << 8 | b << 16;
    }

    private static int pairs(int word, int d, int r) {
        return switch (word >> 10) {
            case 0x00 -> lowest(word);
            case 0x01 -> of(Op.CPC, d, r);
            case 0x02 -> of(Op.SBC, d, r);
            case 0x03 -> of(Op.ADD, d, r);
            case 0x04 -> of(Op.CPSE, d, r);
            case 0x05 -> of(Op.CP, d, r);
            case 0x06 -> of(Op.SUB, d, r);
            case 0x07 -> of(Op.ADC, d, r);
            case 0x08 -> of(Op.AND, d, r);
            case 0x09 -> of(Op.EOR, d, r);
            case 0x0A -> of(Op.OR, d, r);
            default -> of(Op.MOV, d, r);
        };
    }

    private static int lowest(int word) {
        int a = word >> 4 & 15;
        int b = word & 15;
        return switch (word >> 8) {
            case 0 -> word == 0 ? of(Op.NOP, 0, 0) : of(Op.RESERVED, 0, 0);
            case 1 -> of(Op.MOVW, 2 * a, 2 * b);
            case 2 -> of(Op.MULS, 16 + a, 16 + b);
            default -> {
                int[] kinds = {Op.MULSU, Op.FMUL, Op.FMULS, Op.FMULSU};
                yield of(kinds[word >> 6 & 2 | word >> 3 & 1], 16 + (a & 7), 16 + (b & 7));
            }
        };
    }

    private static int displaced(int word, int d) {
        boolean store = (word & 0x0200) != 0;
        boolean y = (word & 0x0008) != 0;
        return of(store ? y ? Op.STD_Y : Op.STD_Z : y ? Op.LDD_Y : Op.LDD_Z, d, 0);
    }

    private static int nine(int word, int d, int r) {
        return switch (word >> 8 & 15) {
            case 0x0, 0x1 -> of(LOADS[word & 15], d, 0);
            case 0x2, 0x3 -> of(STORES[word & 15], d, 0);
            case 0x4, 0x5 -> control(word, d);
            case 0x6 -> of(Op.ADIW, 24 + (word >> 3 & 6), 0);
            case 0x7 -> of(Op.SBIW, 24 + (word >> 3 & 6), 0);
            case 0x8 -> of(Op.CBI, word >> 3 & 31, 1 << (word & 7));
            case 0x9 -> of(Op.SBIC, word >> 3 & 31, 1 << (word & 7));
            case 0xA -> of(Op.SBI, word >> 3 & 31, 1 << (word & 7));
            case 0xB -> of(Op.SBIS, word >> 3 & 31, 1 << (word & 7));
            default -> of(Op.MUL, d, r);
        };
    }

    private static int control(int word, int d) {
        int low = word & 15;
        if (low >= 0xC) {
            return of(low < 0xE ? Op.JMP : Op.CALL, 0, 0);
        }
        if (low == 8) {
            return eights(word);
        }
        if (low == 9) {
            return switch (word & 0x01FF) {
                case 0x009 -> of(Op.IJMP, 0, 0);
                case 0x019 -> of(Op.EIJMP, 0, 0);
                case 0x109 -> of(Op.ICALL, 0, 0);
                case 0x119 -> of(Op.EICALL, 0, 0);
                default -> of(Op.RESERVED, 0, 0);
            };
        }
        return of(SINGLES[low], d, 0);
    }

    private static int eights(int word) {
        if ((word & 0x0100) == 0) {
            return of((word & 0x0080) == 0 ? Op.BSET : Op.BCLR, 1 << (word >> 4 & 7), 0);
        }
        return switch (word >> 4 & 15) {
            case 0x0 -> of(Op.RET, 0, 0);
            case 0x1 -> of(Op.RETI, 0, 0);
            case 0x8 -> of(Op.SLEEP, 0, 0);
            case 0x9 -> of(Op.BREAK, 0, 0);
            case 0xA -> of(Op.WDR, 0, 0);
            case 0xC -> of(Op.LPM, 0, 0);
            case 0xD -> of(Op.ELPM, 0, 0);
            case 0xE -> of(Op.SPM, 0, 0);
            default -> of(Op.RESERVED, 0, 0);
        };
    }

    private static int bits(int word, int d) {
        int bit = 1 << (word & 7);
        if (word < 0xF800) {
            return of((word & 0x0400) == 0 ? Op.BRBS : Op.BRBC, bit, 0);
        }
        if ((word & 0x0008) != 0) {
            return of(Op.RESERVED, 0, 0);
        }
        return switch (word >> 9 & 3) {
            case 0 -> of(Op.BLD, d, bit);
            case 1 -> of(Op.BST, d, bit);
            case 2 -> of(Op.SBRC, d, bit);
            default -> of(Op.SBRS, d, bit);
        };
    }
}
