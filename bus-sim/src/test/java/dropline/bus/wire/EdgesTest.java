package dropline.bus.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.TraceSink;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The edges on a pair are those of the characters on it, in whatever stretches they are asked for. */
final class EdgesTest {
    private static final int BAUD = 250_000;
    private static final double BIT = 4_000;
    private static final Bytes SENT = Bytes.of(0x00, 0x55, 0xFF, 0xA7, 0x12);

    private static Uart ear(int party, Transceiver.Receiver whileSending) {
        return new Uart(party, BIT, 16, whileSending, 3);
    }

    private static List<Double> edges(long stretch, Uart ear) {
        Wire wire = new Wire(new EventOrder(new TraceSink() {}, (rank, at, index, serial) -> true), 4, true);
        Frame frame = new Frame(TraceSink.CONTROLLER, 0, UartClock.exact(BAUD), CharacterFormat.EIGHT_N_ONE);
        frame.kind = TraceSink.REQUEST;
        frame.time(10_000, SENT.length(), 1_000, 1_000);
        wire.begin(frame);
        Edges edges = new Edges(wire, of -> SENT, new Noise(true, 1), BIT);
        List<Double> told = new ArrayList<>();
        int level = 1;
        for (long from = 0; from < 300_000; from += stretch) {
            edges.lookAt(from, from + stretch);
            level = edges.tell(from, from + stretch, ear, level, told::add);
        }
        return told;
    }

    @Test
    void everyBitThatDiffersFromTheOneBeforeIsAnEdge() {
        List<Double> expected = new ArrayList<>();
        int before = 1;
        for (int i = 0; i < SENT.length(); i++) {
            for (int bit = 0; bit < 10; bit++) {
                int now = CharacterFormat.EIGHT_N_ONE.bit(SENT.at(i), bit);
                if (now != before) {
                    expected.add(10_000 + (10 * i + bit) * BIT);
                    before = now;
                }
            }
        }
        Uart other = ear(1, Transceiver.Receiver.OFF_WHILE_SENDING);

        assertEquals(expected, edges(1_000_000, other));
        assertEquals(expected, edges(8_000, other));
        assertEquals(expected, edges(777, other));
    }

    @Test
    void whoeverSendsHearsItselfOnlyWithAReceiverThatIsOn() {
        Uart deaf = ear(TraceSink.CONTROLLER, Transceiver.Receiver.OFF_WHILE_SENDING);
        Uart open = ear(TraceSink.CONTROLLER, Transceiver.Receiver.ALWAYS_ON);

        assertEquals(List.of(), edges(8_000, deaf));
        assertEquals(edges(8_000, ear(1, Transceiver.Receiver.ALWAYS_ON)), edges(8_000, open));
    }
}
