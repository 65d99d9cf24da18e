package dropline.bus.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Transceiver;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** What stands on the pair, bit by bit, at 1 Mbaud (a bit is 1 us). */
final class WaveformTest {
    private static final long BIT = 1_000;
    private static final int CHARS = 40;

    private final Noise noise = new Noise(true, 5);
    private final Waveform wave = new Waveform(frame -> bytes(frame.talker), noise, BIT);

    @Test
    void oneDriverGivesItsLevelAndAnIdleBiasedPairAOne() {
        wave.add(sends(0));

        assertEquals(1, wave.level(-BIT, uart(9)), "driven, before the start bit");
        assertEquals(0, wave.level(BIT / 2.0, uart(9)), "start bit");
        assertEquals(1, wave.level(CHARS * 10.0 * BIT + BIT, uart(9)), "nobody drives");
    }

    @Test
    void driversThatAgreeGiveThatLevel() {
        wave.add(sends(0));
        wave.add(sends(0));

        for (int bit = 0; bit < 10; bit++) {
            double at = (bit + 0.5) * BIT;
            assertEquals(bit == 9 ? 1 : 0, wave.level(at, uart(9)), "bit " + bit);
        }
    }

    @Test
    void driversThatDisagreeGiveADrawnLevelThatHoldsForTheIntervalAndDiffersBetweenReceivers() {
        wave.add(sends(0));
        wave.add(sends(1));
        int ones = 0;
        int differ = 0;
        int disagreements = 0;
        for (int bit = 0; bit < CHARS * 10; bit++) {
            if (bit % 10 == 0 || bit % 10 == 9) {
                continue;
            }
            int level = wave.level((bit + 0.2) * BIT, uart(8));
            assertEquals(level, wave.level((bit + 0.8) * BIT, uart(8)), "one interval, one level: bit " + bit);
            disagreements++;
            ones += level;
            differ += level == wave.level((bit + 0.2) * BIT, uart(9)) ? 0 : 1;
        }
        int half = disagreements / 2;
        assertTrue(ones > half / 2 && ones < half * 3 / 2, "ones=" + ones + " of " + disagreements);
        assertTrue(differ > half / 2 && differ < half * 3 / 2, "differ=" + differ + " of " + disagreements);
    }

    @Test
    void onesOfADriverOfZerosOnlyAreLeftToTheOther() {
        Frame ones = sends(1);
        ones.zerosOnly = true;
        wave.add(ones);
        wave.add(sends(0));

        assertEquals(0, wave.level(1.5 * BIT, uart(9)));
    }

    @Test
    void receiverThatIsOffWhileItSendsSeesAOne() {
        wave.add(sends(0));

        assertEquals(1, wave.level(BIT / 2.0, uart(0)));
    }

    @Test
    void unbiasedIdlePairDropsToZeroNowAndThen() {
        noise.loseBias(true);
        int zeros = 0;
        for (int bit = 0; bit < 64_000; bit++) {
            zeros += 1 - wave.level((bit + 0.5) * BIT, uart(9));
        }
        // One bit in 64, from the model's own figure; the spread of 1,000 is 31.
        assertEquals(1_000, zeros, 150);
    }

    @Test
    void burstOfNoiseIsTheSameForAllReceiversAndEndsWithIt() {
        noise.burst(0, 1_000 * BIT);
        int ones = 0;
        for (int slot = 0; slot < 2_000; slot++) {
            double at = (slot + 0.5) * BIT / 2;
            ones += wave.level(at, uart(8));
            assertEquals(wave.level(at, uart(8)), wave.level(at, uart(9)));
        }
        assertTrue(ones > 800 && ones < 1_200, "ones=" + ones);
        assertEquals(1, wave.level(1_000.5 * BIT, uart(8)));
    }

    /** Talker 0 sends zeros, talker 1 ones. */
    private static Bytes bytes(int talker) {
        int[] values = new int[CHARS];
        Arrays.fill(values, talker == 0 ? 0x00 : 0xFF);
        return Bytes.of(values);
    }

    private static Frame sends(int talker) {
        Frame frame = new Frame(talker, 0, UartClock.exact(1_000_000), CharacterFormat.EIGHT_N_ONE);
        frame.time(0, CHARS, 2 * BIT, 0);
        return frame;
    }

    private static Uart uart(int party) {
        return new Uart(party, BIT, 16, Transceiver.Receiver.OFF_WHILE_SENDING, 77L + party);
    }
}
