package dropline.bus.avr.core;

import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * The processor. It runs up to a cycle and no further than the instruction that is under way then. What peripherals do
 * at instants of their own happens between instructions.
 */
public final class Cpu extends Flow {
    private static final int SPL = 0x5D;
    private static final int SPH = 0x5E;
    private static final int SREG = 0x5F;
    private static final int RAMPZ = 0x5B;
    private static final int EIND = 0x5C;

    private final Alarms alarms = new Alarms();
    private final @Nullable Served[] owners = new Served[Long.SIZE];
    private final IntFunction<String> names;
    private final Stretches interruptsOff = new Stretches();
    private Programming programming = Programming.NONE;
    private Sleep sleep = Sleep.NONE;
    private long requests;
    private boolean isAsleep;

    /** @param names of the registers in the data space, for messages */
    public Cpu(Shape shape, Flash flash, IntFunction<String> names) {
        super(shape, flash);
        this.names = names;
        claim(new Own(), SPL, SPH, SREG);
        if (shape.flashWords() > 0x8000) {
            claim(new Own(), RAMPZ);
        }
        if (shape.wideCounter()) {
            claim(new Own(), EIND);
        }
    }

    /** Puts a part's own time under this processor's; the answer is its number for {@link #due}. */
    public int add(Timed timed) {
        return alarms.add(timed);
    }

    /** When a part is due next; {@link Long#MAX_VALUE} for never. */
    public void due(int number, long cycle) {
        alarms.set(number, cycle);
        stopAt = Math.min(stopAt, alarms.next());
    }

    /** Who owns an interrupt vector. */
    public void own(int vector, Served owner) {
        owners[vector] = owner;
    }

    /** An interrupt is wanted, or no longer; enabled ones only. */
    public void request(int vector, boolean isWanted) {
        if (isWanted) {
            requests |= 1L << vector;
            stopAt = 0;
        } else {
            requests &= ~(1L << vector);
        }
    }

    /** What SPM, and reading the program's memory, comes to. */
    public void programming(Programming own) {
        programming = own;
    }

    /** What WDR comes to. */
    public void watchdog(Watchdog own) {
        watchdog = own;
    }

    /** Who says what a sleep is like. */
    public void sleep(Sleep own) {
        sleep = own;
    }

    /** Cycles since power came. */
    public long cycles() {
        return cycles;
    }

    /** When interrupts were off longest. */
    public Stretches interruptsOff() {
        return interruptsOff;
    }

    /** Where the program is, in bytes as listings count. */
    public int byteAddress() {
        return 2 * pc;
    }

    /** A byte of the data space as it stands, for those who look on; registers of peripherals as nought. */
    public int peek(int address) {
        return bytes[address] & 0xFF;
    }

    /** The program begins anew. */
    public void reset(int wordAddress) {
        pc = wordAddress & mask;
        sreg = 0;
        rampz = 0;
        eind = 0;
        requests = 0;
        isHeld = false;
        isAsleep = false;
        stopAt = 0;
        forgetStack();
        interruptsOff.forget();
        repetition.forget();
    }

    /** What a peripheral throws where a program wants of it what is not modelled. */
    public StoppedException stop(String what) {
        return stopped(what);
    }

    /** The processor stands still for so many cycles, 0 or more. */
    public void halt(long count) {
        cycles += count;
    }

    /** Something was done, or read, that the next time round may come out otherwise. */
    @Override
    public void acted() {
        repetition.forget();
    }

    /** Runs all instructions that begin before a cycle. */
    public void run(long until) {
        while (cycles < until) {
            reach(cycles);
            boolean served = requests != 0 && (sreg & I) != 0;
            if (served && !isHeld) {
                serve();
            } else if (isAsleep) {
                cycles = Math.max(cycles, Math.min(until, alarms.next()));
            } else {
                isHeld = false;
                stopAt = served ? cycles + 1 : Math.min(until, alarms.next());
                burst();
            }
        }
    }

    @Override
    void reach(long cycle) {
        if (alarms.next() <= cycle) {
            repetition.forget();
            alarms.ring(cycle);
        }
    }

    private void serve() {
        int vector = Long.numberOfTrailingZeros(requests);
        cycles += shape.responseCycles() + (isAsleep ? shape.wakeCycles() : 0);
        isAsleep = false;
        pushAddress(pc);
        interruptsOff.off(cycles, vector * shape.vectorWords());
        sreg &= ~I;
        pc = vector * shape.vectorWords();
        repetition.forget();
        Served owner = owners[vector];
        if (owner == null) {
            throw stopped("interrupt vector " + vector + " has no owner");
        }
        owner.served(vector);
    }

    private void burst() {
        int[] operations = flash.operations;
        int[] arguments = flash.arguments;
        while (cycles < stopAt) {
            int at = pc;
            int word = operations[at];
            int op = word & 0xFF;
            int a = word >> 8 & 0xFF;
            int b = word >> 16;
            begun = at;
            pc = at + 1 & mask;
            switch (op >> Op.FAMILY_BITS) {
                case Op.PAIRS -> pairs(op, a, b);
                case Op.SINGLES -> singles(op, a, arguments[at]);
                case Op.LOADS -> loads(op, a, second(op == Op.LDS, at), b);
                case Op.STORES -> stores(op, a, second(op == Op.STS, at), b);
                case Op.FLOW -> flow(op, a, arguments[at]);
                default -> others(op, a, b, arguments[at]);
            }
        }
    }

    private int second(boolean isLong, int at) {
        pc = isLong ? at + 2 & mask : pc;
        return flash.arguments[at];
    }

    private void others(int op, int a, int b, int target) {
        cycles++;
        switch (op) {
            case Op.BSET -> status(sreg | a, cycles);
            case Op.BCLR -> status(sreg & ~a, cycles);
            case Op.BST -> sreg = (bytes[a] & b) == 0 ? sreg & ~T : sreg | T;
            case Op.BLD -> bytes[a] = (byte) ((sreg & T) == 0 ? bytes[a] & ~b : bytes[a] | b);
            case Op.NOP -> {}
            case Op.SLEEP -> {
                isAsleep = sleep.begins(cycles);
                stopAt = 0;
            }
            case Op.WDR -> watchdog.restart(cycles);
            case Op.CPSE -> skip(bytes[a] == bytes[b], target);
            case Op.SBRC -> skip((bytes[a] & b) == 0, target);
            case Op.SBRS -> skip((bytes[a] & b) != 0, target);
            case Op.SBIC -> skip((owner(a + 32, cycles - 1).read(a + 32, cycles - 1) & b) == 0, target);
            case Op.FMULSU -> fractionalOfSigns(a, b);
            case Op.SBIS -> skip((owner(a + 32, cycles - 1).read(a + 32, cycles - 1) & b) != 0, target);
            case Op.BREAK -> throw stopped("BREAK stops a processor that is being debugged; nobody debugs this one");
            default -> throw stopped("0x" + Integer.toHexString(flash.word(begun)) + " is no instruction");
        }
    }

    /** The status register is set; an interrupt that this lets in comes after the next instruction. */
    @Override
    void status(int value, long cycle) {
        int was = sreg;
        sreg = value & 0xFF;
        if ((was & I) == 0 && (sreg & I) != 0) {
            isHeld = true;
            stopAt = 0;
            interruptsOff.on(cycle);
        } else if ((was & I) != 0 && (sreg & I) == 0) {
            interruptsOff.off(cycle, begun);
        }
    }

    @Override
    void program() {
        programming.store(pair(30) | rampz << 16, pair(0), cycles);
    }

    @Override
    int constant(int byteAddress) {
        return programming == Programming.NONE ? super.constant(byteAddress) : programming.read(byteAddress, cycles);
    }

    @Override
    StoppedException stopped(String what) {
        return new StoppedException(what, 2 * begun, cycles);
    }

    @Override
    StoppedException wrongAddress(int address) {
        return stopped(names.apply(address));
    }

    /** The processor's own registers in the data space. */
    private final class Own implements Registers {
        @Override
        public int read(int address, long cycle) {
            return switch (address) {
                case SPL -> sp & 0xFF;
                case SPH -> sp >> 8;
                case SREG -> sreg;
                case RAMPZ -> rampz;
                default -> eind;
            };
        }

        @Override
        public void write(int address, int value, long cycle) {
            switch (address) {
                case SPL -> sp = sp & 0xFF00 | value;
                case SPH -> sp = sp & 0xFF | value << 8;
                case SREG -> status(value, cycle);
                case RAMPZ -> {
                    rampz = value;
                    acted();
                }
                default -> {
                    eind = value;
                    acted();
                }
            }
        }
    }
}
