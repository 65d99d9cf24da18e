package dropline.protocol;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a protocol must know of a node to lay out its frames.
 *
 * @param address the node's address on its segment; 0 stands for all nodes
 * @param signals the signals sent to it, ascending by number
 * @param controls the controls it reports, ascending by number
 * @param firmware which firmware it says it runs; null where that is not known
 */
public record NodeWire(
        int address,
        List<SignalWire> signals,
        List<ControlWire> controls,
        @Nullable FirmwareVersion firmware) {

    /** One of whose firmware nothing is known. */
    public NodeWire(int address, List<SignalWire> signals, List<ControlWire> controls) {
        this(address, signals, controls, null);
    }

    /**
     * A signal as it travels.
     *
     * @param number the number written in the pit file (a register address in Modbus), 0..65535
     * @param valueBytes 1, 2 or 4
     */
    public record SignalWire(int number, int valueBytes) {
        public SignalWire {
            if (number < 0 || number > 65535) {
                throw new IllegalArgumentException("signal number must be 0..65535: number=" + number);
            }
            if (valueBytes != 1 && valueBytes != 2 && valueBytes != 4) {
                throw new IllegalArgumentException("value bytes must be 1, 2 or 4: valueBytes=" + valueBytes);
            }
        }
    }

    /**
     * A control as it travels: a position or a count modulo 2^16.
     *
     * @param number the number written in the pit file (a register address in Modbus), 0..65535
     */
    public record ControlWire(int number) {
        public ControlWire {
            if (number < 0 || number > 65535) {
                throw new IllegalArgumentException("control number must be 0..65535: number=" + number);
            }
        }
    }

    public NodeWire {
        signals = List.copyOf(signals);
        controls = List.copyOf(controls);
    }
}
