package dropline.protocol.modbus;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Destination;
import dropline.protocol.DestinationContract;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import dropline.protocol.NodeWire.ControlWire;
import dropline.protocol.NodeWire.SignalWire;
import dropline.protocol.Protocol;
import dropline.protocol.modbus.ModbusFrame.Request;
import dropline.protocol.modbus.ModbusFrame.Response;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

final class ModbusDestinationTest extends DestinationContract {
    private static final ModbusRtu MODBUS = ModbusRtu.create();
    private static final NodeStatus STATUS = new NodeStatus(0, 0, 0, 0, 0);

    /** Registers 10, 11 with 12, 13; then a hole; then 20. */
    private static final List<SignalWire> SIGNALS =
            List.of(new SignalWire(10, 2), new SignalWire(11, 4), new SignalWire(13, 1), new SignalWire(20, 2));

    private static final NodeWire WITH_CONTROLS =
            new NodeWire(5, SIGNALS, List.of(new ControlWire(100), new ControlWire(103)));
    private static final NodeWire WITHOUT_CONTROLS = new NodeWire(6, SIGNALS, List.of());

    @Override
    protected Protocol protocol() {
        return MODBUS;
    }

    @Override
    protected int mostControls() {
        return 20;
    }

    @Test
    void aPlainPollReadsTheSpanOfTheControls() {
        Destination node = MODBUS.node(WITH_CONTROLS);

        Bytes poll = node.encodeRequest(0, new int[0], 0, new long[0]);
        Bytes reply = node.encodeReply(STATUS, new int[0], 0, new int[] {7, 9});

        assertEquals(new Request(5, new ModbusRequest.ReadRegisters(3, 100, 4)).encode(), poll);
        assertEquals(new Response(5, new ModbusResponse.Registers(3, List.of(7, 0, 0, 9))).encode(), reply);
        assertEquals(8, node.requestChars(new int[0], 0));
        assertEquals(13, node.replyChars(new int[0], 0, 0));
    }

    @Test
    void aPlainPollOfANodeWithoutControlsReadsItsFirstSignalsRegister() {
        Destination node = MODBUS.node(WITHOUT_CONTROLS);

        assertEquals(
                new Request(6, new ModbusRequest.ReadRegisters(3, 10, 1)).encode(),
                node.encodeRequest(0, new int[0], 0, new long[0]));
        assertEquals(7, node.replyChars(new int[0], 0, 0));
    }

    @Test
    void stateForANodeWithControlsIsAnExchange() {
        Destination node = MODBUS.node(WITH_CONTROLS);
        int[] picked = {0, 1, 2};

        Bytes request = node.encodeRequest(0, picked, 3, new long[] {-1, 0x0001_0002, 3});

        assertEquals(
                new Request(5, new ModbusRequest.ExchangeRegisters(100, 4, 10, List.of(0xFFFF, 1, 2, 3))).encode(),
                request);
        assertEquals(13 + 2 * 4, node.requestChars(picked, 3));
        assertEquals(
                new Response(5, new ModbusResponse.Registers(23, List.of(7, 0, 0, 9))).encode(),
                node.encodeReply(STATUS, picked, 3, new int[] {7, 9}));
    }

    @Test
    void stateForANodeWithoutControlsIsAWrite() {
        Destination node = MODBUS.node(WITHOUT_CONTROLS);
        int[] picked = {1, 2};

        assertEquals(
                new Request(6, new ModbusRequest.WriteRegisters(11, List.of(0, 5, 6))).encode(),
                node.encodeRequest(0, picked, 2, new long[] {5, 6}));
        assertEquals(
                new Response(6, new ModbusResponse.RangeWritten(16, 11, 3)).encode(),
                node.encodeReply(STATUS, picked, 2, new int[0]));
        assertEquals(8, node.replyChars(picked, 2, 0));
    }

    @Test
    void stateForAllIsAWriteToAddressZeroWithoutReply() {
        Destination all = MODBUS.broadcast(WITH_CONTROLS);

        assertTrue(MODBUS.canBroadcast());
        assertEquals(
                new Request(0, new ModbusRequest.WriteRegisters(20, List.of(8))).encode(),
                all.encodeRequest(0, new int[] {3}, 1, new long[] {8}));
        assertEquals(0, all.replyChars(new int[] {3}, 1, 0));
        assertEquals(0, all.longestReplyChars());
        assertThrows(IllegalArgumentException.class, () -> all.encodeRequest(0, new int[0], 0, new long[0]));
        assertThrows(UnsupportedOperationException.class, () -> all.encodeReply(STATUS, new int[0], 0, new int[0]));
    }

    @Test
    void slotsBetweenTwoPendingNeighboursAreSentAlongAndAHoleEndsTheRun() {
        assertPicked(MODBUS.node(WITH_CONTROLS), 0b1101, 0, 0, 1, 2);
        assertPicked(MODBUS.node(WITH_CONTROLS), 0b1001, 0, 0);
        assertPicked(MODBUS.node(WITH_CONTROLS), 0b1101, 3, 3);
        assertPicked(MODBUS.node(WITH_CONTROLS), 0b0101, 3, 0, 1, 2);
        assertPicked(MODBUS.node(WITH_CONTROLS), 0b0101, 1, 2);
        assertPicked(MODBUS.node(WITH_CONTROLS), 0, 1);
    }

    @Test
    void aRunEndsAtTheFunctionsLimit() {
        List<SignalWire> row = new ArrayList<>();
        for (int i = 0; i < 64; i++) {
            row.add(new SignalWire(2 * i, 4));
        }
        Destination exchanged = MODBUS.node(new NodeWire(1, row, List.of(new ControlWire(500))));
        Destination written = MODBUS.node(new NodeWire(1, row, List.of()));
        int[] picked = new int[64];

        assertEquals(60, exchanged.pick(new long[] {-1L}, 0, picked));
        assertEquals(13 + 2 * 120, exchanged.requestChars(picked, 60));
        assertEquals(13 + 2 * 120, exchanged.longestRequestChars());
        assertEquals(61, written.pick(new long[] {-1L}, 0, picked));
        assertEquals(9 + 2 * 122, written.longestRequestChars());
        assertEquals(8, written.longestReplyChars());
    }

    @Test
    void aRunMayTakeTheFunctionsLastRegister() {
        List<SignalWire> row = new ArrayList<>();
        for (int i = 0; i < 128; i++) {
            row.add(new SignalWire(i, 2));
        }
        int[] picked = new int[128];
        long[] pending = {-1L, -1L};

        assertEquals(
                121,
                MODBUS.node(new NodeWire(1, row, List.of(new ControlWire(500)))).pick(pending, 0, picked));
        assertEquals(123, MODBUS.node(new NodeWire(1, row, List.of())).pick(pending, 0, picked));
    }

    @Test
    void silenceBeforeAFrameIsThreeAndAHalfCharacters() {
        assertEquals(385, MODBUS.silenceBeforeTenthsOfBit(19_200, CharacterFormat.EIGHT_E_ONE));
        assertEquals(672, MODBUS.silenceBeforeTenthsOfBit(38_400, CharacterFormat.EIGHT_E_ONE));
    }

    @Test
    void everythingThatCannotBeMappedIsNamed() {
        NodeWire wrong = new NodeWire(
                248,
                List.of(new SignalWire(10, 4), new SignalWire(11, 2), new SignalWire(65_535, 4)),
                List.of(new ControlWire(11), new ControlWire(11), new ControlWire(136)));

        assertEquals(
                List.of(
                        "node address must be 1..247: address=248",
                        "signal registers must not overlap and must ascend: register 11 is taken or comes late",
                        "a signal's registers must end at 65535: number=65535 registers=2",
                        "a register must be a signal's or a control's, not both: register=11",
                        "control registers must not overlap and must ascend: register 11 is taken or comes late",
                        "a register must be a signal's or a control's, not both: register=11",
                        "control registers must span at most 125, the most one reply can hold: span=126"),
                ModbusRtu.check(wrong));
        assertThrows(IllegalArgumentException.class, () -> MODBUS.node(wrong));
        assertThrows(IllegalArgumentException.class, () -> MODBUS.broadcast(wrong));
        assertEquals(List.of(), ModbusRtu.check(WITH_CONTROLS));
        assertEquals(List.of(), ModbusRtu.check(new NodeWire(247, List.of(), List.of())));
    }

    private static void assertPicked(Destination node, long pending, int from, int... expected) {
        int[] picked = new int[SIGNALS.size()];
        int count = node.pick(new long[] {pending}, from, picked);
        assertArrayEquals(expected, Arrays.copyOf(picked, count));
    }
}
