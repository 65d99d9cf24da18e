package dropline.protocol.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.HearingContract;
import dropline.protocol.NodeEnd;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import dropline.protocol.NodeWire.ControlWire;
import dropline.protocol.NodeWire.SignalWire;
import dropline.protocol.Protocol;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

final class ModbusHearingTest extends HearingContract {
    private static final NodeStatus STATUS = new NodeStatus(0, 0, 0, 0, 0);
    private static final int[] WIDTHS = {1, 2, 4};
    private static final int QUIET = 100_000;

    @Override
    protected Protocol protocol() {
        return ModbusRtu.create();
    }

    @Override
    protected NodeWire randomNode(Random random, int address) {
        List<SignalWire> signals = numbers(random, 1 + random.nextInt(6), 0).stream()
                .map(number -> new SignalWire(number, WIDTHS[random.nextInt(3)]))
                .toList();
        List<ControlWire> controls = numbers(random, random.nextInt(8), 100).stream()
                .map(ControlWire::new)
                .toList();
        return new NodeWire(address, signals, controls);
    }

    /** A node at address 1 whose registers from one to another are all signals. */
    private static NodeEnd nodeWith(int first, int last) {
        List<SignalWire> signals = new ArrayList<>();
        for (int register = first; register <= last; register++) {
            signals.add(new SignalWire(register, 2));
        }
        NodeEnd end =
                ModbusRtu.create().nodeEnd(new NodeWire(1, signals, List.of()), 19_200, CharacterFormat.EIGHT_E_ONE);
        end.onSilence(QUIET);
        return end;
    }

    private static Bytes answer(NodeEnd node, String request) {
        Bytes asked = Bytes.ofHex(request);
        for (int i = 0; i < asked.length(); i++) {
            node.onByte(asked.at(i));
        }
        node.onSilence(QUIET);
        return node.reply(STATUS, new int[0]);
    }

    private static Bytes answer(NodeEnd node, ModbusRequest request) {
        return answer(node, new ModbusFrame.Request(1, request).encode().toString());
    }

    /** MODBUS application protocol V1.1b3, section 6.3. */
    @Test
    void holdingRegistersReadAsWritten() {
        NodeEnd node = nodeWith(0x6B, 0x6D);
        answer(node, new ModbusRequest.WriteRegisters(0x6B, List.of(0x022B, 0, 0x64)));

        assertEquals(Bytes.ofHex("01 03 06 02 2B 00 00 00 64 05 7A"), answer(node, "01 03 00 6B 00 03 74 17"));
    }

    /** MODBUS application protocol V1.1b3, section 6.6: the answer is an echo. */
    @Test
    void oneRegisterIsWritten() {
        NodeEnd node = nodeWith(1, 1);
        Bytes request = new ModbusFrame.Request(1, new ModbusRequest.WriteRegister(1, 3)).encode();

        assertEquals(Bytes.ofHex("01 06 00 01 00 03 98 0B"), request);
        assertEquals(request, answer(node, request.toString()));
    }

    /** MODBUS application protocol V1.1b3, section 6.12. */
    @Test
    void severalRegistersAreWritten() {
        NodeEnd node = nodeWith(1, 2);

        Bytes answer = answer(node, new ModbusRequest.WriteRegisters(1, List.of(0x0A, 0x0102)));

        assertEquals("01 10 00 01 00 02", answer.part(0, 6).toString());
    }

    /** MODBUS application protocol V1.1b3, section 6.17. */
    @Test
    void registersAreWrittenAndReadAtOnce() {
        NodeEnd node = nodeWith(3, 0x10);
        answer(node, new ModbusRequest.WriteRegisters(3, List.of(0x00FE, 0x0ACD, 1, 3, 0x0D, 0x00FF)));

        Bytes answer = answer(node, new ModbusRequest.ExchangeRegisters(3, 6, 0x0E, List.of(0xFF, 0xFF, 0xFF)));

        assertEquals(
                "01 17 0C 00 FE 0A CD 00 01 00 03 00 0D 00 FF",
                answer.part(0, 15).toString());
    }

    /** MODBUS application protocol V1.1b3, section 7: exceptions 1, 2 and 3. */
    @Test
    void whatIsNotThereIsRefused() {
        NodeEnd node = nodeWith(0, 3);

        assertEquals(
                "01 83 02",
                answer(node, new ModbusRequest.ReadRegisters(3, 3, 2))
                        .part(0, 3)
                        .toString());
        assertEquals(
                "01 81 02",
                answer(node, new ModbusRequest.ReadBits(1, 0, 8)).part(0, 3).toString());
        assertEquals(
                "01 86 02",
                answer(node, new ModbusRequest.WriteRegister(9, 1)).part(0, 3).toString());
        assertEquals(
                "01 AB 01",
                answer(node, Adu.wrap(1, Bytes.of(0x2B, 0x0E, 1, 0)).toString())
                        .part(0, 3)
                        .toString());
        assertEquals(
                "01 83 03",
                answer(node, Adu.wrap(1, Bytes.of(3, 0, 0, 0, 126)).toString())
                        .part(0, 3)
                        .toString());
    }

    @Test
    void writingAControlIsRefused() {
        NodeEnd node = ModbusRtu.create()
                .nodeEnd(
                        new NodeWire(1, List.of(new SignalWire(0, 2)), List.of(new ControlWire(5))),
                        19_200,
                        CharacterFormat.EIGHT_E_ONE);
        node.onSilence(QUIET);
        Bytes request = new ModbusFrame.Request(1, new ModbusRequest.WriteRegister(5, 1)).encode();
        for (int i = 0; i < request.length(); i++) {
            node.onByte(request.at(i));
        }
        node.onSilence(QUIET);

        assertEquals("01 86 02", node.reply(STATUS, new int[] {0}).part(0, 3).toString());
    }
}
