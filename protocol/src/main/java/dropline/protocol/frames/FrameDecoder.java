package dropline.protocol.frames;

import dropline.protocol.Decoded;
import dropline.protocol.Decoded.Reason;
import dropline.protocol.SignalPacking;
import dropline.protocol.cobs.Cobs;
import org.jspecify.annotations.Nullable;

/**
 * Finds Dropline frames in a stream of bytes, whatever the bytes are. A zero ends a frame, good or bad, so that the
 * frame after a bad one is found again; zeros in a row are idle and no error. Not safe for use by several threads.
 */
public final class FrameDecoder {
    private static final Decoded<DroplineFrame> NEED_MORE = new Decoded.NeedMore<>();
    private static final int SHORTEST_STUFFED = 1 + DroplineFrames.REQUEST_HEADER + 2;
    private static final int LONGEST_STUFFED = DroplineFrames.LONGEST_FRAME - 1;

    private final byte[] stuffed = new byte[LONGEST_STUFFED];
    private final byte[] payload = new byte[LONGEST_STUFFED];
    private int received;

    /** Takes the next byte, of which the low eight bits count. */
    public Decoded<DroplineFrame> onByte(int next) {
        if ((byte) next != 0) {
            if (received < LONGEST_STUFFED) {
                stuffed[received] = (byte) next;
            }
            // held at the top, so that a stream without any zero cannot wrap it round
            received = Math.min(received + 1, Integer.MAX_VALUE - 1);
            return NEED_MORE;
        }
        int length = received;
        received = 0;
        return length == 0 ? NEED_MORE : ended(length);
    }

    /**
     * Takes notice of a silence, which means nothing here: a PC may pause inside a frame.
     *
     * @param tenthsOfBit since the end of the last character, 0 or more
     */
    public Decoded<DroplineFrame> onSilence(int tenthsOfBit) {
        if (tenthsOfBit < 0) {
            throw new IllegalArgumentException("silence must not be negative: tenthsOfBit=" + tenthsOfBit);
        }
        return NEED_MORE;
    }

    private Decoded<DroplineFrame> ended(int length) {
        if (length > LONGEST_STUFFED) {
            return new Decoded.Rejected<>(Reason.TOO_LONG, length + 1);
        }
        if (length < SHORTEST_STUFFED) {
            return new Decoded.Rejected<>(Reason.TOO_SHORT, length + 1);
        }
        int checked = Cobs.decode(stuffed, 0, length, payload);
        Reason reason = problem(checked);
        if (reason != null) {
            return new Decoded.Rejected<>(reason, length + 1);
        }
        return new Decoded.Complete<>(FrameCodec.read(payload, checked - 2), length + 1);
    }

    private @Nullable Reason problem(int checked) {
        if (checked < 0) {
            return Reason.BAD_STUFFING;
        }
        if (checked < DroplineFrames.REQUEST_HEADER + 2) {
            return Reason.TOO_SHORT;
        }
        int length = checked - 2;
        if (FrameCodec.CHECK.of(payload, 0, length) != SignalPacking.get(payload, length, 2)) {
            return Reason.BAD_CHECK;
        }
        return FrameCodec.problem(payload, length);
    }
}
