package dropline.bus.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import dropline.protocol.CharacterFormat;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class EdgeReceiverTest {
    private static final double BIT_NANOS = 1e9 / 115_200;

    private record Letter(int value, boolean good, long endNanos) {}

    /** Every value in a row without a pause, at 1 times, and at the published limits of a receiver's tolerance. */
    @Test
    void charactersAreHeardWithinThePublishedToleranceAndNotFarBeyond() {
        // Microchip, AVR USART, "Asynchronous Operational Range", 8 data bits, normal speed: 95.36 % and 104.58 %
        for (double rate : new double[] {1, 0.9536, 1.0458}) {
            assertEquals(all(), values(heard(CharacterFormat.EIGHT_N_ONE, BIT_NANOS / rate)), "rate=" + rate);
        }
        for (double rate : new double[] {0.93, 1.07}) {
            assertFalse(all().equals(values(heard(CharacterFormat.EIGHT_N_ONE, BIT_NANOS / rate))), "rate=" + rate);
        }
    }

    @Test
    void aCharacterEndsWithItsStopBit() {
        List<Letter> heard = heard(CharacterFormat.EIGHT_N_ONE, BIT_NANOS);

        // ten bits at 115200 baud take 86806 ns
        assertEquals(86_806, heard.get(0).endNanos());
        assertEquals(256, heard.size());
    }

    @Test
    void parityAndABreakAreSeen() {
        List<Letter> even = heard(CharacterFormat.EIGHT_E_ONE, BIT_NANOS);
        assertEquals(all(), values(even));

        List<Letter> heard = new ArrayList<>();
        EdgeReceiver receiver = receiver(CharacterFormat.EIGHT_N_ONE, heard);
        receiver.edge(0, 0);
        receiver.edge(10_000_000, 1);
        receiver.edge(20_000_000, 0);
        receiver.edge(20_008_681, 1);
        receiver.end();

        assertEquals(List.of(new Letter(0, false, 86_806), new Letter(0xFF, true, 20_086_806)), heard);
    }

    @Test
    void aSpikeIsNoCharacter() {
        List<Letter> heard = new ArrayList<>();
        EdgeReceiver receiver = receiver(CharacterFormat.EIGHT_N_ONE, heard);

        receiver.edge(0, 0);
        receiver.edge(500, 1);
        receiver.end();

        assertEquals(List.of(), heard);
    }

    private static List<Integer> all() {
        List<Integer> values = new ArrayList<>();
        for (int value = 0; value < 256; value++) {
            values.add(value);
        }
        return values;
    }

    private static List<Integer> values(List<Letter> heard) {
        return heard.stream().filter(Letter::good).map(Letter::value).toList();
    }

    private static EdgeReceiver receiver(CharacterFormat format, List<Letter> heard) {
        return new EdgeReceiver(
                BIT_NANOS, format, (value, good, endNanos) -> heard.add(new Letter(value, good, endNanos)));
    }

    /** What is heard of every value, sent without a pause by a talker with bits of this length. */
    private static List<Letter> heard(CharacterFormat format, double sentBitNanos) {
        List<Letter> heard = new ArrayList<>();
        EdgeReceiver receiver = receiver(format, heard);
        int bits = 0;
        for (int value : all()) {
            for (int bit = 0; bit < format.bits(); bit++) {
                receiver.edge(Math.round(bits++ * sentBitNanos), format.bit(value, bit));
            }
        }
        receiver.end();
        return heard;
    }
}
