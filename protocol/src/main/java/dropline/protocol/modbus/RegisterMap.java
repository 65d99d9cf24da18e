package dropline.protocol.modbus;

import dropline.protocol.Heard;
import dropline.protocol.NodeWire;
import dropline.protocol.NodeWire.ControlWire;
import dropline.protocol.NodeWire.SignalWire;
import java.util.ArrayList;
import java.util.List;

/** Which registers of a node are which signals and controls; a value of four bytes has two, high word first. */
final class RegisterMap {
    private final List<SignalWire> signals;
    private final List<ControlWire> controls;

    RegisterMap(NodeWire node) {
        signals = node.signals();
        controls = node.controls();
    }

    /** The signals whose registers all lie among those written. */
    List<Heard.Value> signals(int start, List<Integer> written) {
        List<Heard.Value> values = new ArrayList<>();
        for (SignalWire signal : signals) {
            int at = signal.number() - start;
            int count = ModbusRtu.registers(signal.valueBytes());
            if (at >= 0 && at + count <= written.size()) {
                long value = written.get(at);
                values.add(new Heard.Value(signal.number(), count == 1 ? value : value << 16 | written.get(at + 1)));
            }
        }
        return values;
    }

    /** The controls among registers read. */
    List<Heard.Value> controls(int start, List<Integer> read) {
        List<Heard.Value> values = new ArrayList<>();
        for (ControlWire control : controls) {
            int at = control.number() - start;
            if (at >= 0 && at < read.size()) {
                values.add(new Heard.Value(control.number(), read.get(at)));
            }
        }
        return values;
    }

    /** Whether a register is a signal's. */
    boolean isSignal(int register) {
        return signals.stream()
                .anyMatch(signal -> register >= signal.number()
                        && register < signal.number() + ModbusRtu.registers(signal.valueBytes()));
    }

    /** Whether a register may be read: a signal's, or one from the first control to the last. */
    boolean isThere(int register) {
        return isSignal(register)
                || (!controls.isEmpty()
                        && register >= controls.get(0).number()
                        && register <= controls.get(controls.size() - 1).number());
    }

    /** Which of the node's controls a register is, in number order; -1 for none. */
    int control(int register) {
        for (int i = 0; i < controls.size(); i++) {
            if (controls.get(i).number() == register) {
                return i;
            }
        }
        return -1;
    }
}
