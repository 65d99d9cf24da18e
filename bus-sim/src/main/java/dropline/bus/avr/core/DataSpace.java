package dropline.bus.avr.core;

import org.jspecify.annotations.Nullable;

/** The data space beyond the registers: what peripherals own, and memory; and the instructions that reach it. */
abstract class DataSpace extends Arithmetic {
    private static final int X = 26;
    private static final int Y = 28;
    private static final int Z_PAIR = 30;

    final Flash flash;
    private final int ramStart;
    private final @Nullable Registers[] io;
    private final long[] weights;
    private long contents;

    int sp;
    private int lowestSp;
    int rampz;
    int eind;

    DataSpace(Flash flash, int ramStart, int ramEnd) {
        super(ramEnd + 1);
        this.flash = flash;
        this.ramStart = ramStart;
        io = new Registers[ramStart];
        weights = new long[bytes.length];
        long weight = 0;
        for (int i = 0; i < weights.length; i++) {
            weight += 0x9E3779B97F4A7C15L;
            long mixed = (weight ^ weight >>> 30) * 0xBF58476D1CE4E5B9L;
            mixed = (mixed ^ mixed >>> 27) * 0x94D049BB133111EBL;
            weights[i] = mixed ^ mixed >>> 31;
        }
        sp = ramEnd;
        lowestSp = ramEnd;
    }

    /** Gives addresses to whoever is behind them. */
    public final void claim(Registers owner, int... addresses) {
        for (int address : addresses) {
            if (io[address] != null) {
                throw new IllegalArgumentException("an address has one owner: address=" + address);
            }
            io[address] = owner;
        }
    }

    /** The lowest address that anything was pushed to. */
    public final int lowestStack() {
        return lowestSp + 1;
    }

    /** A sum over what memory holds: the same for the same contents. */
    final long contents() {
        return contents;
    }

    final void forgetStack() {
        sp = bytes.length - 1;
        lowestSp = sp;
    }

    /** What stops a program that goes where nothing is. */
    abstract StoppedException wrongAddress(int address);

    abstract StoppedException stopped(String what);

    /** Lets all happen that is due by a cycle. */
    abstract void reach(long cycle);

    /** Something was done beyond memory: what follows may not be what was. */
    abstract void acted();

    final int load(int address, long cycle) {
        if (address >= ramStart) {
            if (address >= bytes.length) {
                throw wrongAddress(address);
            }
            return bytes[address] & 0xFF;
        }
        return address < 32 ? bytes[address] & 0xFF : owner(address, cycle).read(address, cycle);
    }

    final void store(int address, int value, long cycle) {
        if (address >= ramStart) {
            if (address >= bytes.length) {
                throw wrongAddress(address);
            }
            contents += (value - (bytes[address] & 0xFF)) * weights[address];
            bytes[address] = (byte) value;
        } else if (address < 32) {
            bytes[address] = (byte) value;
        } else {
            owner(address, cycle).write(address, value, cycle);
        }
    }

    /** Who is behind an address, with all that happens before a cycle done. */
    final Registers owner(int address, long cycle) {
        reach(cycle - 1);
        Registers owner = io[address];
        if (owner == null) {
            throw wrongAddress(address);
        }
        return owner;
    }

    final void push(int value) {
        if (sp < ramStart || sp >= bytes.length) {
            throw stopped("the stack has left memory: it points to 0x" + Integer.toHexString(sp));
        }
        contents += ((value & 0xFF) - (bytes[sp] & 0xFF)) * weights[sp];
        bytes[sp] = (byte) value;
        sp--;
        if (sp < lowestSp) {
            lowestSp = sp;
        }
    }

    final int pop() {
        sp++;
        if (sp < ramStart || sp >= bytes.length) {
            throw stopped("the stack has left memory: it points to 0x" + Integer.toHexString(sp));
        }
        return bytes[sp] & 0xFF;
    }

    final void loads(int op, int d, int k, int a) {
        cycles += 2;
        switch (op) {
            case Op.LD_X -> bytes[d] = (byte) load(pair(X), cycles - 1);
            case Op.LD_X_INC -> bytes[d] = (byte) load(after(X), cycles - 1);
            case Op.LD_X_DEC -> bytes[d] = (byte) load(before(X), cycles - 1);
            case Op.LDD_Y -> bytes[d] = (byte) load(pair(Y) + k, cycles - 1);
            case Op.LD_Y_INC -> bytes[d] = (byte) load(after(Y), cycles - 1);
            case Op.LD_Y_DEC -> bytes[d] = (byte) load(before(Y), cycles - 1);
            case Op.LDD_Z -> bytes[d] = (byte) load(pair(Z_PAIR) + k, cycles - 1);
            case Op.LD_Z_INC -> bytes[d] = (byte) load(after(Z_PAIR), cycles - 1);
            case Op.LD_Z_DEC -> bytes[d] = (byte) load(before(Z_PAIR), cycles - 1);
            case Op.LDS -> bytes[d] = (byte) load(k, cycles - 1);
            case Op.POP -> bytes[d] = (byte) pop();
            case Op.IN -> {
                cycles--;
                bytes[d] = (byte) owner(a + 32, cycles - 1).read(a + 32, cycles - 1);
            }
            default -> programMemory(op, d);
        }
    }

    private void programMemory(int op, int d) {
        cycles++;
        boolean far = op == Op.ELPM || op == Op.ELPM_INC;
        int address = pair(Z_PAIR) | (far ? rampz << 16 : 0);
        bytes[d] = (byte) constant(address);
        if (op == Op.LPM_INC || op == Op.ELPM_INC) {
            setPair(Z_PAIR, address + 1);
            rampz = far ? address + 1 >> 16 & 0xFF : rampz;
        }
    }

    /** A byte of the program, or what stands in its place just then. */
    int constant(int byteAddress) {
        return flash.read(byteAddress);
    }

    final void stores(int op, int d, int k, int b) {
        cycles += 2;
        int value = bytes[d] & 0xFF;
        switch (op) {
            case Op.ST_X -> store(pair(X), value, cycles);
            case Op.ST_X_INC -> store(after(X), value, cycles);
            case Op.ST_X_DEC -> store(before(X), value, cycles);
            case Op.STD_Y -> store(pair(Y) + k, value, cycles);
            case Op.ST_Y_INC -> store(after(Y), value, cycles);
            case Op.ST_Y_DEC -> store(before(Y), value, cycles);
            case Op.STD_Z -> store(pair(Z_PAIR) + k, value, cycles);
            case Op.ST_Z_INC -> store(after(Z_PAIR), value, cycles);
            case Op.ST_Z_DEC -> store(before(Z_PAIR), value, cycles);
            case Op.STS -> store(k, value, cycles);
            case Op.PUSH -> push(value);
            case Op.OUT -> {
                cycles--;
                owner(b + 32, cycles).write(b + 32, value, cycles);
            }
            case Op.SBI -> owner(d + 32, cycles).writeBit(d + 32, b, true, cycles);
            case Op.CBI -> owner(d + 32, cycles).writeBit(d + 32, b, false, cycles);
            default -> program();
        }
    }

    /** SPM. */
    abstract void program();

    private int after(int pointer) {
        int address = pair(pointer);
        setPair(pointer, address + 1);
        return address;
    }

    private int before(int pointer) {
        int address = pair(pointer) - 1 & 0xFFFF;
        setPair(pointer, address);
        return address;
    }
}
