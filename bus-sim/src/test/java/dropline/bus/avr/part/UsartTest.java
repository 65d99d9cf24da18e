package dropline.bus.avr.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From the text of DS40002061, chapter "USART0", alone. */
final class UsartTest {
    private static final int UCSRA = 0xC0;
    private static final int UCSRB = 0xC1;
    private static final int UCSRC = 0xC2;
    private static final int UBRRL = 0xC4;
    private static final int UDR = 0xC6;
    private static final int RXC = 0x80;
    private static final int TXC = 0x40;
    private static final int UDRE = 0x20;
    private static final int FE = 0x10;
    private static final int DOR = 0x08;
    private static final int UPE = 0x04;
    private static final int U2X = 0x02;
    private static final int EIGHT_N_ONE = 6;

    /** UBRR 3 at normal speed: 64 cycles a bit, 250000 baud at 16 MHz. */
    private static final int BIT = 64;

    private final IdleChip chip = new IdleChip();
    private final List<String> sent = new ArrayList<>();

    @BeforeEach
    void on() {
        chip.write(UBRRL, 3);
        chip.write(UCSRC, EIGHT_N_ONE);
        chip.write(UCSRB, 0x18);
        chip.chip.usart(0).tell((bits, length, start, bitCycles) -> sent.add(length + "@" + start + "/" + bitCycles));
    }

    /** Puts a character on the line: start bit, the bits as given, lowest first. */
    private void hear(double start, double bitCycles, int bits, int count) {
        Line line = chip.chip.usart(0).line();
        int before = 1;
        for (int i = 0; i <= count; i++) {
            int now = i == 0 ? 0 : bits >> i - 1 & 1;
            if (now != before) {
                line.edge(start + i * bitCycles);
                before = now;
            }
        }
        if (before == 0) {
            line.edge(start + (count + 1) * bitCycles);
        }
        chip.chip.usart(0).lineChanged();
    }

    private void hear(double start, int value) {
        hear(start, BIT, value | 0x100, 9);
    }

    private boolean has(int flag) {
        return (chip.read(UCSRA) & flag) != 0;
    }

    @Test
    void aCharacterIsThereWithTheVoteOfItsStopBit() {
        hear(1024, 0x5A);

        // samples 8, 9 and 10 of 16: the tenth bit's last one stands 9 + 10/16 bits after the start edge
        chip.runTo(1024 + 616 - 1);
        assertTrue(!has(RXC));
        chip.runTo(1024 + 616 + 1);
        assertTrue(has(RXC));
        assertEquals(0x5A, chip.read(UDR));
        assertTrue(!has(RXC));
    }

    @Test
    void atDoubleSpeedSamplesFourToSixDecide() {
        chip.write(UBRRL, 7);
        chip.write(UCSRA, U2X);
        hear(1024, 0x5A);

        chip.runTo(1024 + 624 - 1);
        assertTrue(!has(RXC));
        chip.runTo(1024 + 624 + 1);
        assertTrue(has(RXC));
    }

    @Test
    void twoCharactersWaitAndAThirdInTheShiftRegisterUntilAFourthBegins() {
        for (int i = 0; i < 3; i++) {
            hear(1024 + i * 10 * BIT, 0x11 * (i + 1));
        }
        chip.runTo(1024 + 31 * BIT);
        assertTrue(!has(DOR), "a third one only waits");

        hear(1024 + 40 * BIT, 0x44);
        chip.runTo(1024 + 41 * BIT);

        assertTrue(has(DOR), "the fourth one's start bit destroys the third");
        chip.runTo(1024 + 51 * BIT);
        assertEquals(0x11, chip.read(UDR));
        assertTrue(!has(DOR), "valid until UDR is read");
        assertEquals(0x22, chip.read(UDR));
        assertEquals(0x44, chip.read(UDR));
        assertEquals(1, chip.chip.usart(0).overruns());
    }

    @Test
    void aThirdCharacterIsHadIfTheFirstIsReadBeforeAFourthBegins() {
        for (int i = 0; i < 3; i++) {
            hear(1024 + i * 10 * BIT, 0x11 * (i + 1));
        }
        chip.runTo(1024 + 31 * BIT);

        assertEquals(0x11, chip.read(UDR));
        assertEquals(0x22, chip.read(UDR));
        assertEquals(0x33, chip.read(UDR));
        assertTrue(!has(RXC));
    }

    @Test
    void itIsKnownHowLongACharacterWaitedToBeFetched() {
        hear(1024, 0x11);
        hear(1024 + 10 * BIT, 0x22);
        chip.runTo(1024 + 616 + 1000);
        assertEquals(0x11, chip.read(UDR));
        assertEquals(1000.0, chip.chip.usart(0).longestWait(), 4);

        assertEquals(0x22, chip.read(UDR));
        assertEquals(1000.0, chip.chip.usart(0).longestWait(), 4, "the second one came ten bits later");
        chip.runTo(chip.cpu.cycles() + 5000);
        chip.read(UDR);
        assertEquals(1000.0, chip.chip.usart(0).longestWait(), 4, "nothing was there");
    }

    @Test
    void aWrongStopBitStaysWithItsCharacter() {
        hear(1024, BIT, 0x0FF, 9);
        hear(1024 + 12 * BIT, 0x42);
        chip.runTo(1024 + 24 * BIT);

        assertTrue(has(FE));
        assertEquals(0xFF, chip.read(UDR));
        assertTrue(!has(FE));
        assertEquals(0x42, chip.read(UDR));
    }

    @Test
    void evenParityIsCheckedAndSent() {
        chip.write(UCSRC, EIGHT_N_ONE | 0x20);
        hear(1024, BIT, 0x200 | 0x101, 10);
        hear(1024 + 12 * BIT, BIT, 0x200 | 0x001, 10);
        chip.runTo(1024 + 24 * BIT);

        assertTrue(!has(UPE), "one bit set and a parity bit of one are even");
        assertEquals(1, chip.read(UDR));
        assertTrue(has(UPE));

        chip.write(UDR, 0x07);
        chip.runTo(1024 + 40 * BIT);
        assertTrue(sent.get(0).startsWith("11@"), sent::toString);
    }

    @Test
    void inMultiProcessorModeOnlyAddressesAreHeard() {
        chip.write(UCSRB, 0x1C);
        chip.write(UCSRA, 0x01);
        hear(1024, BIT, 0x200 | 0x055, 10);
        hear(1024 + 12 * BIT, BIT, 0x200 | 0x100 | 0x0AA, 10);
        chip.runTo(1024 + 24 * BIT);

        assertEquals(0x02, chip.read(UCSRB) & 0x02, "the ninth bit");
        assertEquals(0xAA, chip.read(UDR));
        assertTrue(!has(RXC), "the other one was no address");
    }

    @Test
    void twoCharactersFollowEachOtherAndOnlyThenIsTransmissionComplete() {
        chip.runTo(1000);
        chip.write(UDR, 1);
        chip.runTo(1020);
        assertTrue(has(UDRE), "the first one is in the shift register");
        chip.write(UDR, 2);
        assertTrue(!has(UDRE));
        chip.write(UDR, 3);

        long first = Long.parseLong(sent.get(0).split("[@/]")[1]);
        chip.runTo(first + 10 * BIT + 2);
        assertTrue(has(UDRE));
        assertTrue(!has(TXC), "there is one more in the buffer");
        chip.runTo(first + 20 * BIT - 1);
        assertTrue(!has(TXC));
        chip.runTo(first + 20 * BIT + 1);

        assertTrue(has(TXC));
        assertEquals(List.of("10@" + first + "/64", "10@" + (first + 10 * BIT) + "/64"), sent, "the third was ignored");
        chip.write(UCSRA, TXC);
        assertTrue(!has(TXC), "cleared by writing a one");
    }

    @Test
    void theFirstStartBitComesWithinABeatOfTheBaudRateGenerator() {
        for (int wait = 0; wait < 16; wait++) {
            long now = chip.cpu.cycles();
            chip.write(UDR, 1);
            chip.runTo(now + 10 * BIT + 8 + wait);
            long start = Long.parseLong(sent.get(sent.size() - 1).split("[@/]")[1]);
            assertTrue(start > now && start <= now + 4, () -> now + " " + start);
        }
    }

    /**
     * "Recommended Maximum Receiver Baud Rate Error", both tables, the columns Rslow and Rfast: a stream of characters
     * without a pause is had at a rate just inside, and not just beyond Rfast. The table's Rslow asks for all three
     * samples of the stop bit, where two decide: beyond the middle one nothing is had.
     */
    @ParameterizedTest
    @CsvSource({
        "0, 5, 93.20, 106.67", "0, 7, 94.81, 105.11", "0, 8, 95.36, 104.58", "0, 9, 95.81, 104.14",
        "1, 5, 94.12, 105.66", "1, 7, 95.52, 104.35", "1, 8, 96.00, 103.90", "1, 9, 96.39, 103.53"
    })
    void bearsRatesAsFarOffAsTheTablesSay(int isDouble, int data, double slow, double fast) {
        for (double inside : new double[] {slow + 0.4, fast - 0.4}) {
            assertEquals(20, had(isDouble, data, inside / 100), () -> "inside at " + inside);
        }
        int samples = isDouble == 1 ? 8 : 16;
        double toMiddle = 100.0 * (data + 1) * samples / ((data + 1) * samples + samples / 2 + 1);
        for (double outside : new double[] {toMiddle - 0.5, fast + 0.7}) {
            assertTrue(had(isDouble, data, outside / 100) < 20, () -> "outside at " + outside);
        }
    }

    /** How many of 20 characters, all zeros so that only the stop bits count, are had without an error. */
    private static int had(int isDouble, int data, double rate) {
        IdleChip chip = new IdleChip();
        // many cycles a sample, so that nothing depends on where in a sample an edge falls by much
        chip.write(UBRRL, isDouble == 1 ? 199 : 99);
        chip.write(UCSRA, isDouble * U2X);
        chip.write(UCSRC, data == 9 ? EIGHT_N_ONE : (data - 5) << 1);
        chip.write(UCSRB, data == 9 ? 0x14 : 0x10);
        double bit = 1600 / rate;
        Line line = chip.chip.usart(0).line();
        double first = 100_000 + 100;
        double whole = (2 + data) * bit;
        for (int i = 0; i < 20; i++) {
            line.edge(first + i * whole);
            line.edge(first + i * whole + (1 + data) * bit);
        }
        chip.chip.usart(0).lineChanged();
        int had = 0;
        for (int i = 1; i <= 20; i++) {
            chip.runTo((long) (first + i * whole + bit * 0.4));
            boolean isThere = (chip.read(UCSRA) & RXC) != 0;
            boolean isWrong = (chip.read(UCSRA) & FE) != 0;
            int value = chip.read(UDR);
            had += isThere && !isWrong && value == 0 ? 1 : 0;
        }
        return had;
    }
}
