package dropline.protocol.frames;

import dropline.protocol.FirmwareVersion;
import dropline.protocol.NodeStatus;
import dropline.protocol.SignalPacking;
import java.util.List;

/** One frame's content; {@link DroplineFrames} describes how it lies on the wire. */
public sealed interface DroplineFrame {

    /**
     * Asks one node for its reply, perhaps with state for it.
     *
     * @param address 1..255
     * @param sequence the state sequence number, 0..255
     */
    record Poll(int address, int sequence, List<Entry> entries) implements DroplineFrame {
        public Poll {
            requireRange(1, 255, address, "address");
            requireRange(0, 255, sequence, "sequence");
            entries = List.copyOf(entries);
        }
    }

    /**
     * Asks one node which firmware it runs.
     *
     * @param address 1..255
     */
    record Question(int address) implements DroplineFrame {
        public Question {
            requireRange(1, 255, address, "address");
        }
    }

    /**
     * A node's answer to that.
     *
     * @param address 1..255
     * @param firmware 0.0 where it does not know
     */
    record Identity(int address, NodeStatus status, FirmwareVersion firmware) implements DroplineFrame {
        public Identity {
            requireRange(1, 255, address, "address");
        }
    }

    /**
     * State for all nodes; nobody replies.
     *
     * @param sequence the state sequence number, 0..255
     */
    record State(int sequence, List<Entry> entries) implements DroplineFrame {
        public State {
            requireRange(0, 255, sequence, "sequence");
            entries = List.copyOf(entries);
        }
    }

    /**
     * A node's answer to a poll.
     *
     * @param address 1..255
     * @param wideNumbers whether control numbers take two bytes; needed from 256 on
     */
    record Reply(int address, NodeStatus status, boolean wideNumbers, List<Control> controls) implements DroplineFrame {
        public Reply {
            requireRange(1, 255, address, "address");
            controls = List.copyOf(controls);
            for (Control control : controls) {
                requireRange(0, wideNumbers ? 0xFFFF : 0xFF, control.number(), "control number");
            }
        }
    }

    /**
     * A signal's value.
     *
     * @param number 0..16383
     * @param valueBytes 1, 2 or 4
     * @param packed the value's low {@code 8 * valueBytes} bits as an unsigned number; see {@link SignalPacking#unpack}
     */
    record Entry(int number, int valueBytes, long packed) {
        public Entry {
            requireRange(0, DroplineFrames.HIGHEST_SIGNAL_NUMBER, number, "signal number");
            if (valueBytes != 1 && valueBytes != 2 && valueBytes != 4) {
                throw new IllegalArgumentException("value bytes must be 1, 2 or 4: valueBytes=" + valueBytes);
            }
            if (packed != SignalPacking.pack(packed, valueBytes)) {
                throw new IllegalArgumentException(
                        "packed value must fit in " + valueBytes + " bytes: packed=" + packed);
            }
        }
    }

    /**
     * A control's position or count.
     *
     * @param number 0..65535
     * @param value 0..65535
     */
    record Control(int number, int value) {
        public Control {
            requireRange(0, 0xFFFF, number, "control number");
            requireRange(0, 0xFFFF, value, "control value");
        }
    }

    private static void requireRange(int least, int most, int value, String name) {
        if (value < least || value > most) {
            throw new IllegalArgumentException(name + " must be " + least + ".." + most + ": " + name + "=" + value);
        }
    }
}
