package dropline.bus.avr.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** From the text and the timing diagrams of DS40002061, chapters "8-bit Timer/Counter0" and "16-bit Timer/Counter1". */
final class TimerTest {
    private static final int DDRD = 0x2A;
    private static final int TIFR0 = 0x35;
    private static final int TIFR1 = 0x36;
    private static final int GTCCR = 0x43;
    private static final int TCCR0A = 0x44;
    private static final int TCCR0B = 0x45;
    private static final int TCNT0 = 0x46;
    private static final int OCR0A = 0x47;
    private static final int OCR0B = 0x48;
    private static final int TCCR1A = 0x80;
    private static final int TCCR1B = 0x81;
    private static final int TCNT1L = 0x84;
    private static final int TCNT1H = 0x85;
    private static final int OCR1AL = 0x88;
    private static final int OCR1AH = 0x89;

    private final IdleChip chip = new IdleChip();

    @Test
    void countsEveryCycleAtFullSpeedAndWrapsAt256() {
        chip.runTo(100);
        long begun = chip.cpu.cycles();
        chip.write(TCCR0B, 1);

        chip.runTo(begun + 100);
        assertEquals((chip.cpu.cycles() - begun) & 0xFF, chip.read(TCNT0));
        chip.runTo(begun + 1000);
        assertEquals((chip.cpu.cycles() - begun) & 0xFF, chip.read(TCNT0));
        assertTrue((chip.read(TIFR0) & 1) != 0, "overflow");
    }

    @Test
    void thePrescalerBeginsAnewWhenItIsToldTo() {
        chip.runTo(1001);
        chip.write(TCCR0B, 3);
        chip.write(GTCCR, 1);
        long begun = chip.cpu.cycles();

        chip.runTo(begun + 61);
        assertEquals(0, chip.read(TCNT0));
        chip.runTo(begun + 65);
        assertEquals(1, chip.read(TCNT0));
    }

    @Test
    void clearOnCompareHasAPeriodOfOneMoreThanItsTop() {
        chip.write(TCCR0A, 2);
        chip.write(OCR0A, 99);
        chip.write(GTCCR, 1);
        long begun = chip.cpu.cycles();
        chip.write(TCCR0B, 2);

        chip.runTo(begun + 99 * 8 + 2);
        assertEquals(99, chip.read(TCNT0));
        assertEquals(0, chip.read(TIFR0) & 2, "the flag comes with the tick that clears");
        chip.runTo(begun + 100 * 8 + 2);
        assertEquals(0, chip.read(TCNT0));
        assertEquals(2, chip.read(TIFR0) & 3, "and no overflow");
        chip.write(TIFR0, 2);
        chip.runTo(begun + 200 * 8 + 2);
        assertEquals(2, chip.read(TIFR0) & 2);
    }

    @Test
    void aFastPwmOutputIsOnForOneTickMoreThanItsValue() {
        List<Long> edges = new ArrayList<>();
        chip.chip.port('D').watch((levels, changed, cycle) -> {
            if ((changed & 0x20) != 0) {
                edges.add((levels & 0x20) != 0 ? cycle : -cycle);
            }
        });
        chip.write(DDRD, 0x20);
        chip.write(OCR0B, 63);
        chip.write(TCCR0A, 0x23);
        chip.write(TCCR0B, 1);
        chip.runTo(4000);

        for (int i = 2; i + 2 < edges.size(); i += 2) {
            long on = Math.abs(edges.get(i));
            assertEquals(64, Math.abs(edges.get(i + 1)) - on, edges::toString);
            assertEquals(256, Math.abs(edges.get(i + 2)) - on, edges::toString);
        }
        assertTrue(edges.size() > 20);
    }

    @Test
    void aPhaseCorrectOutputIsOnForTwiceItsValueInAPeriodOf510() {
        List<Long> edges = new ArrayList<>();
        chip.chip.port('D').watch((levels, changed, cycle) -> {
            if ((changed & 0x20) != 0) {
                edges.add((levels & 0x20) != 0 ? cycle : -cycle);
            }
        });
        chip.write(DDRD, 0x20);
        chip.write(OCR0B, 50);
        chip.write(TCCR0A, 0x21);
        chip.write(TCCR0B, 1);
        chip.runTo(6000);

        int from = edges.get(4) > 0 ? 4 : 5;
        assertEquals(100, Math.abs(edges.get(from + 1)) - edges.get(from), edges::toString);
        assertEquals(510, edges.get(from + 2) - edges.get(from), edges::toString);
    }

    @Test
    void sixteenBitsAreReadAndWrittenThroughOneLatch() {
        chip.write(TCNT1H, 0x12);
        chip.write(TCNT1L, 0x34);
        assertEquals(0x34, chip.read(TCNT1L));
        assertEquals(0x12, chip.read(TCNT1H));

        chip.write(OCR1AH, 0x01);
        chip.write(OCR1AL, 0x00);
        chip.write(TCNT1H, 0);
        chip.write(TCNT1L, 0);
        chip.write(TCCR1A, 0);
        chip.write(TCCR1B, 0x09);
        long begun = chip.cpu.cycles();
        chip.runTo(begun + 256);
        assertEquals(0, chip.read(TIFR1) & 2);
        chip.runTo(begun + 258);
        assertEquals(2, chip.read(TIFR1) & 2);
    }
}
