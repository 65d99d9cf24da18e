package dropline.bus.avr.core;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Cycles of every instruction, typed from the AVR Instruction Set Manual DS40002198, the column "AVRe+" of the summary
 * in its chapter 4, for program counters of 16 and of 22 bits.
 */
final class CycleTableTest {
    private static final int RAM = 0x100;

    private static Cpu cpu(boolean isWide, int... words) {
        Flash flash = new Flash(isWide ? 0x20000 : 0x4000);
        for (int i = 0; i < words.length; i++) {
            flash.set(i, words[i]);
        }
        Cpu cpu = new Cpu(new Shape(flash.size(), RAM, 0x8FF, isWide, 2, 4, 4), flash, address -> "nothing there");
        Registers memory = new Registers() {
            private int value;

            @Override
            public int read(int address, long cycle) {
                return value;
            }

            @Override
            public void write(int address, int written, long cycle) {
                value = written;
            }
        };
        cpu.claim(memory, 0x3E);
        cpu.reset(0);
        cpu.setPair(26, 0x200);
        cpu.setPair(28, 0x200);
        cpu.setPair(30, 0x200);
        return cpu;
    }

    private static long cycles(boolean isWide, int... words) {
        Cpu cpu = cpu(isWide, words);
        cpu.push(0);
        cpu.run(1);
        return cpu.cycles();
    }

    @ParameterizedTest
    @CsvSource({
        "ADD,0C01,1", "ADC,1C01,1", "ADIW,9601,2", "SUB,1801,1", "SUBI,5001,1", "SBC,0801,1", "SBCI,4001,1",
        "SBIW,9701,2", "AND,2001,1", "ANDI,7001,1", "OR,2801,1", "ORI,6001,1", "EOR,2401,1", "COM,9400,1",
        "NEG,9401,1", "INC,9403,1", "DEC,940A,1", "MUL,9C01,2", "MULS,0201,2", "MULSU,0301,2", "FMUL,0309,2",
        "FMULS,0381,2", "FMULSU,0389,2", "CP,1401,1", "CPC,0401,1", "CPI,3001,1", "MOV,2C01,1", "MOVW,0101,1",
        "LDI,E001,1", "LD X,900C,2", "LD X+,900D,2", "LD -X,900E,2", "LD Y,8008,2", "LD Y+,9009,2", "LD -Y,900A,2",
        "LDD Y,8009,2", "LD Z,8000,2", "LD Z+,9001,2", "LD -Z,9002,2", "LDD Z,8001,2", "ST X,920C,2", "ST X+,920D,2",
        "ST -X,920E,2", "ST Y,8208,2", "ST Y+,9209,2", "ST -Y,920A,2", "STD Y,8209,2", "ST Z,8200,2", "ST Z+,9201,2",
        "ST -Z,9202,2", "STD Z,8201,2", "LPM,95C8,3", "LPM Z,9004,3", "LPM Z+,9005,3", "ELPM,95D8,3", "ELPM Z,9006,3",
        "ELPM Z+,9007,3", "IN,B60E,1", "OUT,BE0E,1", "PUSH,920F,2", "POP,900F,2", "LSR,9406,1", "ROR,9407,1",
        "ASR,9405,1", "SWAP,9402,1", "BSET,9408,1", "BCLR,9488,1", "SBI,9AF0,2", "CBI,98F0,2", "BST,FA00,1",
        "BLD,F800,1", "NOP,0000,1", "WDR,95A8,1", "SLEEP,9588,1", "RJMP,C001,2", "IJMP,9409,2", "EIJMP,9419,2"
    })
    void takeWhatTheManualSays(String name, String word, int expected) {
        assertEquals(expected, cycles(false, Integer.parseInt(word, 16)), name);
        assertEquals(expected, cycles(true, Integer.parseInt(word, 16)), name);
    }

    @ParameterizedTest
    @CsvSource({
        "LDS,9000,0200,2,2",
        "STS,9200,0200,2,2",
        "JMP,940C,0010,3,3",
        "CALL,940E,0010,4,5",
        "RCALL,D001,0000,3,4",
        "ICALL,9509,0000,3,4",
        "EICALL,9519,0000,4,4"
    })
    void callsTakeOneMoreWithAWideProgramCounter(String name, String word, String second, int narrow, int wide) {
        int first = Integer.parseInt(word, 16);
        int next = Integer.parseInt(second, 16);

        assertEquals(name.equals("EICALL") ? 4 : narrow, cycles(false, first, next), name);
        assertEquals(wide, cycles(true, first, next), name);
    }

    @ParameterizedTest
    @CsvSource({"RET,9508,4,5", "RETI,9518,4,5"})
    void returnsToo(String name, String word, int narrow, int wide) {
        for (boolean isWide : new boolean[] {false, true}) {
            Cpu cpu = cpu(isWide, Integer.parseInt(word, 16));
            cpu.push(0);
            cpu.push(0);
            cpu.push(0);
            cpu.run(1);
            assertEquals(isWide ? wide : narrow, cpu.cycles(), name);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "BRBS not taken,F009,0000,1", "BRBC taken,F409,0000,2", "CPSE equal over one word,1000,0000,2",
        "CPSE equal over two words,1000,9000,3", "SBRC skips one,FC00,0000,2", "SBRC skips two,FC00,9000,3",
        "SBRS does not skip,FE00,0000,1", "SBIC skips one,99F0,0000,2", "SBIC skips two,99F0,940C,3",
        "SBIS does not skip,9BF0,0000,1"
    })
    void branchesAndSkipsTakeMoreWhenTaken(String name, String word, String second, int expected) {
        assertEquals(expected, cycles(false, Integer.parseInt(word, 16), Integer.parseInt(second, 16)), name);
    }

    @Test
    void aWordThatIsNoInstructionStopsTheProgramWithItsPlace() {
        Cpu cpu = cpu(false, 0x0000, 0x940B);

        StoppedException stop =
                org.junit.jupiter.api.Assertions.assertThrows(StoppedException.class, () -> cpu.run(100));

        assertEquals(2, stop.byteAddress());
        assertEquals("0x940b is no instruction", stop.getMessage());
    }
}
