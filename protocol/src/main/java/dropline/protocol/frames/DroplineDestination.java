package dropline.protocol.frames;

import dropline.protocol.Bytes;
import dropline.protocol.Destination;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import dropline.protocol.PendingSlots;
import dropline.protocol.SignalPacking;
import dropline.protocol.frames.DroplineFrame.Control;
import dropline.protocol.frames.DroplineFrame.Entry;
import java.util.ArrayList;
import java.util.List;

/** One node, or all of them, spoken to in Dropline frames. */
final class DroplineDestination implements Destination {
    private static final int OVERHEAD = DroplineFrames.WRAPPING + DroplineFrames.REQUEST_HEADER;
    private static final int ROOM = DroplineFrames.LONGEST_FRAME - OVERHEAD;

    private final int address;
    private final boolean toAll;
    private final int[] numbers;
    private final int[] valueBytes;
    private final int[] controlNumbers;
    private final boolean wideNumbers;
    private final int replyChars;
    private final int longestRequest;

    DroplineDestination(NodeWire wire, boolean toAll, int controlNumberBytes) {
        this.address = toAll ? 0 : wire.address();
        this.toAll = toAll;
        this.numbers =
                wire.signals().stream().mapToInt(NodeWire.SignalWire::number).toArray();
        this.valueBytes = wire.signals().stream()
                .mapToInt(NodeWire.SignalWire::valueBytes)
                .toArray();
        this.controlNumbers =
                wire.controls().stream().mapToInt(NodeWire.ControlWire::number).toArray();
        this.wideNumbers = controlNumberBytes == 2;
        this.replyChars = toAll
                ? 0
                : DroplineFrames.WRAPPING
                        + DroplineFrames.REPLY_HEADER
                        + controlNumbers.length * (controlNumberBytes + 2);
        this.longestRequest = OVERHEAD + fullest(valueBytes);
    }

    @Override
    public int pick(long[] pending, int from, int[] picked) {
        int slots = numbers.length;
        int room = ROOM;
        int count = 0;
        int slot = PendingSlots.nextWrapping(pending, from, slots);
        int first = slot;
        while (slot >= 0) {
            room -= 2 + valueBytes[slot];
            if (room < 0) {
                break;
            }
            picked[count++] = slot;
            slot = PendingSlots.nextWrapping(pending, slot + 1, slots);
            if (slot == first) {
                break;
            }
        }
        return count;
    }

    @Override
    public int requestChars(int[] picked, int count) {
        int chars = OVERHEAD + 2 * count;
        for (int i = 0; i < count; i++) {
            chars += valueBytes[picked[i]];
        }
        return chars;
    }

    @Override
    public int replyChars(int[] picked, int count, double draw) {
        return replyChars;
    }

    @Override
    public int longestRequestChars() {
        return longestRequest;
    }

    @Override
    public int longestReplyChars() {
        return replyChars;
    }

    @Override
    public Bytes encodeRequest(int sequence, int[] picked, int count, long[] values) {
        List<Entry> entries = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            int width = valueBytes[picked[i]];
            entries.add(new Entry(numbers[picked[i]], width, SignalPacking.pack(values[i], width)));
        }
        return FrameCodec.encode(
                toAll
                        ? new DroplineFrame.State(sequence, entries)
                        : new DroplineFrame.Poll(address, sequence, entries));
    }

    @Override
    public Bytes encodeReply(NodeStatus status, int[] picked, int count, int[] controlValues) {
        if (toAll) {
            throw new UnsupportedOperationException("nobody replies to a broadcast");
        }
        if (controlValues.length != controlNumbers.length) {
            throw new IllegalArgumentException("control values must be one per control: controls="
                    + controlNumbers.length + " values=" + controlValues.length);
        }
        List<Control> controls = new ArrayList<>(controlNumbers.length);
        for (int i = 0; i < controlNumbers.length; i++) {
            controls.add(new Control(controlNumbers[i], controlValues[i] & 0xFFFF));
        }
        return FrameCodec.encode(new DroplineFrame.Reply(address, status, wideNumbers, controls));
    }

    /** The most bytes that any choice of whole entries fills of a frame's room. */
    private static int fullest(int[] valueBytes) {
        boolean[] reachable = new boolean[ROOM + 1];
        reachable[0] = true;
        int most = 0;
        for (int width : valueBytes) {
            int size = 2 + width;
            for (int filled = ROOM; filled >= size; filled--) {
                if (reachable[filled - size]) {
                    reachable[filled] = true;
                    most = Math.max(most, filled);
                }
            }
        }
        return most;
    }
}
