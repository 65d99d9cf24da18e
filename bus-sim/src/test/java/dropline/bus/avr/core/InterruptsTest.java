package dropline.bus.avr.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** DS40002061 and 2549, "Reset and Interrupt Handling" and "Interrupt Response Time". */
final class InterruptsTest {
    private static final int NOP = 0x0000;
    private static final int SEI = 0x9478;
    private static final int RETI = 0x9518;
    private static final int SLEEP = 0x9588;
    private static final int INC_R5 = 0x9453;
    private static final int STAY = 0xCFFF;

    private final Flash flash = new Flash(0x4000);

    private Cpu cpu(int responseCycles, int... words) {
        for (int i = 0; i < words.length; i++) {
            flash.set(0x100 + i, words[i]);
        }
        Shape shape = new Shape(0x4000, 0x100, 0x8FF, false, 2, responseCycles, responseCycles);
        Cpu cpu = new Cpu(shape, flash, address -> "nothing there");
        cpu.own(1, vector -> cpu.request(1, false));
        cpu.reset(0x100);
        flash.set(2, STAY);
        return cpu;
    }

    @Test
    void theVectorIsReachedAfterTheResponseCyclesOfTheChip() {
        for (int response : new int[] {4, 5}) {
            Cpu cpu = cpu(response, SEI, NOP, NOP, NOP, STAY);
            cpu.run(3);
            cpu.request(1, true);

            cpu.run(4);

            assertEquals(3 + response, cpu.cycles());
            assertEquals(4, cpu.byteAddress());
        }
    }

    @Test
    void oneInstructionAfterSeiIsExecutedBeforeAnyPendingInterrupt() {
        Cpu cpu = cpu(4, SEI, INC_R5, INC_R5, STAY);
        cpu.request(1, true);

        cpu.run(3);

        assertEquals(1, cpu.peek(5));
        assertEquals(4, cpu.byteAddress());
    }

    @Test
    void oneInstructionAfterRetiIsExecutedBeforeTheNextInterrupt() {
        Cpu cpu = cpu(4, SEI, NOP, INC_R5, INC_R5, STAY);
        cpu.own(1, vector -> {});
        flash.set(2, RETI);
        cpu.request(1, true);

        // SEI, NOP, into the vector, RETI, one INC, and into the vector again
        cpu.run(2 + 4 + 4 + 1 + 1);

        assertEquals(1, cpu.peek(5));
        assertEquals(4, cpu.byteAddress());
    }

    @Test
    void wakingUpTakesAsManyCyclesAgain() {
        Cpu cpu = cpu(4, SEI, SLEEP, STAY);
        cpu.sleep(cycle -> true);
        cpu.run(50);
        cpu.request(1, true);

        cpu.run(51);

        assertEquals(50 + 4 + 4, cpu.cycles());
    }

    @Test
    void theLowestVectorComesFirst() {
        Cpu cpu = cpu(4, SEI, NOP, STAY);
        cpu.own(2, vector -> cpu.request(2, false));
        cpu.request(2, true);
        cpu.request(1, true);

        cpu.run(3);

        assertEquals(4, cpu.byteAddress());
    }

    @Test
    void aLoopThatChangesNothingIsPassedOverUpToWhatIsDueNext() {
        Cpu cpu = cpu(4, SEI, STAY);
        int[] rung = new int[1];
        int alarm = cpu.add(cycle -> rung[0]++);
        cpu.due(alarm, 1_000_000);

        cpu.run(2_000_000);

        assertEquals(1, rung[0]);
        assertTrue(cpu.skippedCycles() > 1_900_000, () -> "skipped=" + cpu.skippedCycles());
    }

    @Test
    void whetherLoopsArePassedOverChangesNoInstant() {
        long[] reached = new long[2];
        for (int way = 0; way < 2; way++) {
            Cpu cpu = cpu(4, SEI, NOP, NOP, 0xCFFD);
            cpu.skipLoops(way == 0);
            int alarm = cpu.add(cycle -> cpu.request(1, true));
            cpu.due(alarm, 12_345);
            cpu.run(12_346);
            reached[way] = cpu.cycles() * 0x10000 + cpu.byteAddress();
        }

        assertEquals(reached[1], reached[0]);
    }
}
