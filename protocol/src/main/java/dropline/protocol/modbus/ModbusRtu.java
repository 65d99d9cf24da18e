package dropline.protocol.modbus;

import dropline.protocol.CharacterFormat;
import dropline.protocol.Destination;
import dropline.protocol.Listener;
import dropline.protocol.NodeEnd;
import dropline.protocol.NodeWire;
import dropline.protocol.NodeWire.ControlWire;
import dropline.protocol.NodeWire.SignalWire;
import dropline.protocol.Protocol;
import java.util.ArrayList;
import java.util.List;

/**
 * Modbus RTU as a cockpit's protocol. A signal is a holding register, two where its value takes four bytes (high word
 * first); a control is a holding register. Numbers in the pit file are register addresses as on the wire, counted from
 * 0.
 *
 * <p>A plain poll reads all registers from the node's lowest control to its highest (function 3). A poll with state
 * writes one run of neighbouring registers and reads the controls in one transaction (function 23); a node without
 * controls is written by function 16, and polled by reading one register, that of its first signal. State for all nodes
 * is written by function 16 to address 0, which nobody answers; the controller then owes the nodes the turnaround delay
 * (MODBUS over serial line V1.02, section 2.4.1), which is not part of any length here.
 */
public final class ModbusRtu implements Protocol {

    private ModbusRtu() {}

    /** The protocol; it has nothing to set. */
    public static ModbusRtu create() {
        return new ModbusRtu();
    }

    /**
     * What keeps a node from being mapped to registers, one sentence a problem; empty when all is well.
     *
     * @param node with the address of one node, 1..247
     */
    public static List<String> check(NodeWire node) {
        List<String> problems = new ArrayList<>();
        if (node.address() < 1 || node.address() > ModbusFrame.HIGHEST_ADDRESS) {
            problems.add("node address must be 1..247: address=" + node.address());
        }
        checkSignals(node, problems);
        checkControls(node, problems);
        return List.copyOf(problems);
    }

    /** Holding registers that a value takes: 1 or 2. */
    public static int registers(int valueBytes) {
        return valueBytes == 4 ? 2 : 1;
    }

    @Override
    public String name() {
        return "modbus-rtu";
    }

    /** t3.5; see {@link ModbusTiming}. */
    @Override
    public int silenceBeforeTenthsOfBit(int baud, CharacterFormat format) {
        return ModbusTiming.frameGapTenthsOfBit(baud, format);
    }

    @Override
    public boolean canBroadcast() {
        return true;
    }

    /** @throws IllegalArgumentException where {@link #check} finds problems, with their texts */
    @Override
    public Framing framing() {
        return Framing.AFTER_SILENCE;
    }

    @Override
    public Destination node(NodeWire node) {
        refuse(check(node));
        return new ModbusDestination(node, false);
    }

    /** @throws IllegalArgumentException for signals whose registers overlap or end beyond 65535 */
    @Override
    public Destination broadcast(NodeWire all) {
        List<String> problems = new ArrayList<>();
        checkSignals(all, problems);
        refuse(problems);
        return new ModbusDestination(new NodeWire(0, all.signals(), List.of()), true);
    }

    private static void checkSignals(NodeWire node, List<String> problems) {
        int free = 0;
        for (SignalWire signal : node.signals()) {
            if (signal.number() < free) {
                problems.add("signal registers must not overlap and must ascend: register " + signal.number()
                        + " is taken or comes late");
            }
            free = signal.number() + registers(signal.valueBytes());
            if (free > 0x10000) {
                problems.add("a signal's registers must end at 65535: number=" + signal.number() + " registers=2");
            }
        }
    }

    private static void checkControls(NodeWire node, List<String> problems) {
        int free = 0;
        for (ControlWire control : node.controls()) {
            if (control.number() < free) {
                problems.add("control registers must not overlap and must ascend: register " + control.number()
                        + " is taken or comes late");
            }
            free = control.number() + 1;
            if (takenBySignal(node, control.number())) {
                problems.add("a register must be a signal's or a control's, not both: register=" + control.number());
            }
        }
        if (!node.controls().isEmpty()) {
            int span = free - node.controls().get(0).number();
            if (span > ModbusRequest.MOST_REGISTERS_READ) {
                problems.add("control registers must span at most " + ModbusRequest.MOST_REGISTERS_READ
                        + ", the most one reply can hold: span=" + span);
            }
        }
    }

    private static boolean takenBySignal(NodeWire node, int register) {
        for (SignalWire signal : node.signals()) {
            int into = register - signal.number();
            if (into >= 0 && into < registers(signal.valueBytes())) {
                return true;
            }
        }
        return false;
    }

    private static void refuse(List<String> problems) {
        if (!problems.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", problems));
        }
    }

    @Override
    public Listener listener(List<NodeWire> nodes, int baud, CharacterFormat format) {
        return new ModbusListener(nodes, baud, format);
    }

    @Override
    public NodeEnd nodeEnd(NodeWire node, int baud, CharacterFormat format) {
        refuse(check(node));
        return new ModbusNode(node, baud, format);
    }
}
