package dropline.protocol.frames;

import dropline.protocol.Bytes;
import dropline.protocol.Decoded.Reason;
import dropline.protocol.FirmwareVersion;
import dropline.protocol.NodeStatus;
import dropline.protocol.SignalPacking;
import dropline.protocol.cobs.Cobs;
import dropline.protocol.crc.Crc;
import dropline.protocol.crc.CrcCatalogue;
import dropline.protocol.frames.DroplineFrame.Control;
import dropline.protocol.frames.DroplineFrame.Entry;
import dropline.protocol.frames.DroplineFrame.Identity;
import dropline.protocol.frames.DroplineFrame.Poll;
import dropline.protocol.frames.DroplineFrame.Question;
import dropline.protocol.frames.DroplineFrame.Reply;
import dropline.protocol.frames.DroplineFrame.State;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Turns frames into bytes, and payloads back into frames. */
final class FrameCodec {
    static final Crc CHECK = new Crc(CrcCatalogue.CRC_16_IBM_3740);

    private static final int POLL = 0x01;
    private static final int STATE = 0x02;
    private static final int QUESTION = 0x03;
    private static final int REPLY = 0x81;
    private static final int IDENTITY = 0x83;
    private static final int WIDE_REPLY = 0xC1;

    private final byte[] payload = new byte[DroplineFrames.LONGEST_PAYLOAD + 2];
    private int length;

    private FrameCodec() {}

    static Bytes encode(DroplineFrame frame) {
        FrameCodec codec = new FrameCodec();
        if (frame instanceof Poll poll) {
            codec.request(POLL, poll.address(), poll.sequence(), poll.entries());
        } else if (frame instanceof State state) {
            codec.request(STATE, 0, state.sequence(), state.entries());
        } else if (frame instanceof Question question) {
            codec.request(QUESTION, question.address(), 0, List.of());
        } else if (frame instanceof Reply reply) {
            codec.reply(reply);
        } else if (frame instanceof Identity identity) {
            codec.replyHead(IDENTITY, identity.address(), identity.status());
            codec.append(identity.firmware().major(), 1);
            codec.append(identity.firmware().minor(), 1);
        } else {
            throw new AssertionError(frame);
        }
        return codec.wrapped();
    }

    /** Whether a header byte opens a frame of this protocol. */
    static boolean known(int header) {
        return switch (header) {
            case POLL, STATE, QUESTION, REPLY, IDENTITY, WIDE_REPLY -> true;
            default -> false;
        };
    }

    /** Why a payload is no frame, or null; {@link #read} may be called when it is null. */
    static @Nullable Reason problem(byte[] payload, int length) {
        int header = length == 0 ? 0 : payload[0] & 0xFF;
        if (!known(header)) {
            return length == 0 ? Reason.TOO_SHORT : Reason.BAD_KIND;
        }
        boolean reply = header >= REPLY;
        if (length < (reply ? DroplineFrames.REPLY_HEADER : DroplineFrames.REQUEST_HEADER)) {
            return Reason.TOO_SHORT;
        }
        boolean toAll = payload[1] == 0;
        if (toAll != (header == STATE)) {
            return Reason.BAD_ADDRESS;
        }
        if (reply) {
            if (header == IDENTITY) {
                return length == DroplineFrames.REPLY_HEADER + 2 ? null : Reason.BAD_LENGTH;
            }
            int size = header == WIDE_REPLY ? 4 : 3;
            return (length - DroplineFrames.REPLY_HEADER) % size == 0 ? null : Reason.BAD_LENGTH;
        }
        if (header == QUESTION) {
            return length == DroplineFrames.REQUEST_HEADER ? null : Reason.BAD_LENGTH;
        }
        return entriesProblem(payload, length);
    }

    static DroplineFrame read(byte[] payload, int length) {
        int address = payload[1] & 0xFF;
        int sequence = payload[2] & 0xFF;
        return switch (payload[0] & 0xFF) {
            case POLL -> new Poll(address, sequence, entries(payload, length));
            case STATE -> new State(sequence, entries(payload, length));
            case QUESTION -> new Question(address);
            case IDENTITY ->
                new Identity(address, status(payload), new FirmwareVersion(payload[8] & 0xFF, payload[9] & 0xFF));
            case REPLY -> reply(payload, length, false);
            case WIDE_REPLY -> reply(payload, length, true);
            default -> throw new AssertionError(payload[0]);
        };
    }

    private static @Nullable Reason entriesProblem(byte[] payload, int length) {
        int at = DroplineFrames.REQUEST_HEADER;
        while (at < length) {
            int code = payload[at] >> 6 & 3;
            if (code == 3) {
                return Reason.BAD_VALUE;
            }
            at += 2 + (1 << code);
        }
        return at == length ? null : Reason.BAD_LENGTH;
    }

    private static List<Entry> entries(byte[] payload, int length) {
        List<Entry> entries = new ArrayList<>();
        int at = DroplineFrames.REQUEST_HEADER;
        while (at < length) {
            int key = (int) SignalPacking.get(payload, at, 2);
            int valueBytes = 1 << (key >> 14);
            long packed = SignalPacking.get(payload, at + 2, valueBytes);
            entries.add(new Entry(key & DroplineFrames.HIGHEST_SIGNAL_NUMBER, valueBytes, packed));
            at += 2 + valueBytes;
        }
        return entries;
    }

    private static NodeStatus status(byte[] payload) {
        return new NodeStatus(
                payload[2] & 0xFF,
                payload[3] & 0xFF,
                payload[4] & 0xFF,
                (int) SignalPacking.get(payload, 5, 2),
                payload[7] & 0xFF);
    }

    private static Reply reply(byte[] payload, int length, boolean wide) {
        int numberBytes = wide ? 2 : 1;
        List<Control> controls = new ArrayList<>();
        for (int at = DroplineFrames.REPLY_HEADER; at < length; at += numberBytes + 2) {
            int number = (int) SignalPacking.get(payload, at, numberBytes);
            controls.add(new Control(number, (int) SignalPacking.get(payload, at + numberBytes, 2)));
        }
        return new Reply(payload[1] & 0xFF, status(payload), wide, controls);
    }

    private void request(int header, int address, int sequence, List<Entry> entries) {
        append(header, 1);
        append(address, 1);
        append(sequence, 1);
        for (Entry entry : entries) {
            int widthCode = Integer.numberOfTrailingZeros(entry.valueBytes());
            append((long) widthCode << 14 | entry.number(), 2);
            append(entry.packed(), entry.valueBytes());
        }
    }

    private void reply(Reply reply) {
        replyHead(reply.wideNumbers() ? WIDE_REPLY : REPLY, reply.address(), reply.status());
        for (Control control : reply.controls()) {
            append(control.number(), reply.wideNumbers() ? 2 : 1);
            append(control.value(), 2);
        }
    }

    private void replyHead(int header, int address, NodeStatus status) {
        append(header, 1);
        append(address, 1);
        append(status.lastSequence(), 1);
        append(status.bootCount(), 1);
        append(status.receiveErrors(), 1);
        append(status.longestLoopUnits(), 2);
        append(status.refreshes(), 1);
    }

    private void append(long value, int bytes) {
        if (length + bytes > DroplineFrames.LONGEST_PAYLOAD) {
            throw new IllegalArgumentException("a frame's payload must be at most " + DroplineFrames.LONGEST_PAYLOAD
                    + " bytes: length=" + (length + bytes));
        }
        length = SignalPacking.put(value, bytes, payload, length);
    }

    private Bytes wrapped() {
        SignalPacking.put(CHECK.of(payload, 0, length), 2, payload, length);
        byte[] wire = new byte[length + DroplineFrames.WRAPPING];
        int stuffed = Cobs.encode(payload, 0, length + 2, wire, 0);
        return Bytes.copyOf(wire, 0, stuffed + 1);
    }
}
