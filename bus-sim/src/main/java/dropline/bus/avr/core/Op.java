package dropline.bus.avr.core;

/** Numbers of the operations, in families of sixteen that are executed together. */
final class Op {
    static final int FAMILY_BITS = 4;

    static final int PAIRS = 0;
    static final int ADD = 0x00;
    static final int ADC = 0x01;
    static final int SUB = 0x02;
    static final int SBC = 0x03;
    static final int AND = 0x04;
    static final int OR = 0x05;
    static final int EOR = 0x06;
    static final int CP = 0x07;
    static final int CPC = 0x08;
    static final int MOV = 0x09;
    static final int MOVW = 0x0A;
    static final int MUL = 0x0B;
    static final int MULS = 0x0C;
    static final int MULSU = 0x0D;
    static final int FMUL = 0x0E;
    static final int FMULS = 0x0F;

    static final int SINGLES = 1;
    static final int SUBI = 0x10;
    static final int SBCI = 0x11;
    static final int ANDI = 0x12;
    static final int ORI = 0x13;
    static final int CPI = 0x14;
    static final int LDI = 0x15;
    static final int ADIW = 0x16;
    static final int SBIW = 0x17;
    static final int COM = 0x18;
    static final int NEG = 0x19;
    static final int INC = 0x1A;
    static final int DEC = 0x1B;
    static final int ASR = 0x1C;
    static final int LSR = 0x1D;
    static final int ROR = 0x1E;
    static final int SWAP = 0x1F;

    static final int LOADS = 2;
    static final int LD_X = 0x20;
    static final int LD_X_INC = 0x21;
    static final int LD_X_DEC = 0x22;
    static final int LDD_Y = 0x23;
    static final int LD_Y_INC = 0x24;
    static final int LD_Y_DEC = 0x25;
    static final int LDD_Z = 0x26;
    static final int LD_Z_INC = 0x27;
    static final int LD_Z_DEC = 0x28;
    static final int LDS = 0x29;
    static final int POP = 0x2A;
    static final int LPM = 0x2B;
    static final int LPM_INC = 0x2C;
    static final int ELPM = 0x2D;
    static final int ELPM_INC = 0x2E;
    static final int IN = 0x2F;

    static final int STORES = 3;
    static final int ST_X = 0x30;
    static final int ST_X_INC = 0x31;
    static final int ST_X_DEC = 0x32;
    static final int STD_Y = 0x33;
    static final int ST_Y_INC = 0x34;
    static final int ST_Y_DEC = 0x35;
    static final int STD_Z = 0x36;
    static final int ST_Z_INC = 0x37;
    static final int ST_Z_DEC = 0x38;
    static final int STS = 0x39;
    static final int PUSH = 0x3A;
    static final int OUT = 0x3B;
    static final int SBI = 0x3C;
    static final int CBI = 0x3D;
    static final int SPM = 0x3E;

    static final int FLOW = 4;
    static final int RJMP = 0x40;
    static final int JMP = 0x41;
    static final int RCALL = 0x42;
    static final int CALL = 0x43;
    static final int RET = 0x44;
    static final int RETI = 0x45;
    static final int IJMP = 0x46;
    static final int ICALL = 0x47;
    static final int EIJMP = 0x48;
    static final int EICALL = 0x49;
    static final int BRBS = 0x4A;
    static final int BRBC = 0x4B;

    static final int OTHERS = 5;
    static final int BSET = 0x50;
    static final int BCLR = 0x51;
    static final int BST = 0x52;
    static final int BLD = 0x53;
    static final int NOP = 0x54;
    static final int SLEEP = 0x55;
    static final int WDR = 0x56;
    static final int BREAK = 0x57;
    static final int CPSE = 0x58;
    static final int SBRC = 0x59;
    static final int SBRS = 0x5A;
    static final int SBIC = 0x5B;
    static final int SBIS = 0x5C;
    static final int FMULSU = 0x5D;
    static final int RESERVED = 0x5E;

    private Op() {}
}
