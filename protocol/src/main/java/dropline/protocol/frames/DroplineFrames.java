package dropline.protocol.frames;

import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Destination;
import dropline.protocol.Listener;
import dropline.protocol.NodeEnd;
import dropline.protocol.NodeWire;
import dropline.protocol.NodeWire.ControlWire;
import dropline.protocol.NodeWire.SignalWire;
import dropline.protocol.Protocol;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Dropline's own protocol. A frame is a payload and its CRC-16/IBM-3740, byte-stuffed (COBS) and ended by a zero; at
 * most {@value #LONGEST_FRAME} bytes on the wire, the zero included. Every number travels most significant byte first.
 *
 * <pre>
 * poll       01  address  sequence  entry...    address 1..255; entries are state for this node
 * state      02  00       sequence  entry...    to all nodes; nobody replies
 * question   03  address  00                    which firmware does it run?
 * identity   83  address  status    major minor 1 byte each; 0.0 where it does not know
 * reply      81  address  status    control...  control: number 1 byte, value 2 bytes
 * reply      C1  address  status    control...  control: number 2 bytes, value 2 bytes
 *
 * entry      width in the top two bits (0: 1 byte, 1: 2 bytes, 2: 4 bytes), number in the other 14, then the value
 * status     last sequence applied 1, boot count 1, receive errors 1, longest loop in 100 us 2, refreshes 1
 * </pre>
 *
 * <p>An entry names its own width, so that a node can step over the signals of others in a state frame without knowing
 * them; that leaves 14 bits for the number. A node's replies use the short control numbers when all of its numbers are
 * below 256. Since a payload and its check stay below 255 bytes, stuffing costs exactly one byte and a frame's length
 * follows from its payload's. Within a frame the entries of a {@link Destination} follow the order in which its slots
 * were picked.
 */
public final class DroplineFrames implements Protocol {

    /**
     * Bytes on the wire, delimiter included: fits the 63 usable bytes of a 64-byte ring and one 62-byte USB payload.
     */
    public static final int LONGEST_FRAME = 62;

    /** The highest signal number a frame can carry. */
    public static final int HIGHEST_SIGNAL_NUMBER = 0x3FFF;

    /** Stuffing code, check and delimiter. */
    static final int WRAPPING = 4;

    static final int REQUEST_HEADER = 3;
    static final int REPLY_HEADER = 8;
    static final int LONGEST_PAYLOAD = LONGEST_FRAME - WRAPPING;

    private static final int HIGHEST_ADDRESS = 255;

    private DroplineFrames() {}

    /** The protocol; it has nothing to set. */
    public static DroplineFrames create() {
        return new DroplineFrames();
    }

    /**
     * What keeps a node from being spoken to, in a sentence with the limit, or null when all is well.
     *
     * @param node with the address of one node, 1..255
     */
    public static @Nullable String checkFits(NodeWire node) {
        if (node.address() < 1 || node.address() > HIGHEST_ADDRESS) {
            return "node address must be 1.." + HIGHEST_ADDRESS + ": address=" + node.address();
        }
        String signals = checkSignals(node);
        if (signals != null) {
            return signals;
        }
        String repeated = checkOrder(node);
        if (repeated != null) {
            return repeated;
        }
        int most = (LONGEST_PAYLOAD - REPLY_HEADER) / (numberBytes(node) + 2);
        if (node.controls().size() > most) {
            return "a reply holds at most " + most + " controls when their numbers take " + numberBytes(node)
                    + (numberBytes(node) == 1 ? " byte" : " bytes (one above 255)") + ": controls="
                    + node.controls().size();
        }
        return null;
    }

    /** Encodes a frame, check, stuffing and delimiter included. */
    public static Bytes encode(DroplineFrame frame) {
        return FrameCodec.encode(frame);
    }

    @Override
    public String name() {
        return "dropline";
    }

    /** Always 0: frames end by a zero byte. */
    @Override
    public int silenceBeforeTenthsOfBit(int baud, CharacterFormat format) {
        return 0;
    }

    @Override
    public boolean canBroadcast() {
        return true;
    }

    @Override
    public boolean acknowledgesState() {
        return true;
    }

    @Override
    public boolean marksReplies() {
        return true;
    }

    @Override
    public Framing framing() {
        return Framing.AFTER_DELIMITER;
    }

    /** @throws IllegalArgumentException where {@link #checkFits} finds a problem, with its text */
    @Override
    public Destination node(NodeWire node) {
        refuse(checkFits(node));
        return new DroplineDestination(node, false, numberBytes(node));
    }

    /** @throws IllegalArgumentException for a signal number that does not fit in an entry */
    @Override
    public Destination broadcast(NodeWire all) {
        refuse(checkSignals(all));
        return new DroplineDestination(all, true, 1);
    }

    /** Bytes of a control number in this node's replies: 1 or 2. */
    private static int numberBytes(NodeWire node) {
        for (ControlWire control : node.controls()) {
            if (control.number() > 0xFF) {
                return 2;
            }
        }
        return 1;
    }

    private static @Nullable String checkSignals(NodeWire wire) {
        for (SignalWire signal : wire.signals()) {
            if (signal.number() > HIGHEST_SIGNAL_NUMBER) {
                return "a signal number in a Dropline frame must be 0.." + HIGHEST_SIGNAL_NUMBER + ": number="
                        + signal.number();
            }
        }
        return null;
    }

    private static @Nullable String checkOrder(NodeWire node) {
        int last = -1;
        for (SignalWire signal : node.signals()) {
            if (signal.number() <= last) {
                return "a node's signal numbers must differ and ascend: number=" + signal.number() + " after " + last;
            }
            last = signal.number();
        }
        last = -1;
        for (ControlWire control : node.controls()) {
            if (control.number() <= last) {
                return "a node's control numbers must differ and ascend: number=" + control.number() + " after " + last;
            }
            last = control.number();
        }
        return null;
    }

    private static void refuse(@Nullable String problem) {
        if (problem != null) {
            throw new IllegalArgumentException(problem);
        }
    }

    @Override
    public Bytes askFirmware(int address) {
        return encode(new DroplineFrame.Question(address));
    }

    @Override
    public Listener listener(List<NodeWire> nodes, int baud, CharacterFormat format) {
        return new DroplineListener();
    }

    @Override
    public NodeEnd nodeEnd(NodeWire node, int baud, CharacterFormat format) {
        return new DroplineNode(node, node(node));
    }
}
