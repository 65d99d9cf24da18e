package dropline.protocol.modbus;

import dropline.protocol.CharacterFormat;
import dropline.protocol.Decoded;
import dropline.protocol.Decoded.Reason;

/**
 * Finds Modbus RTU frames in a stream of bytes and silences, whatever the bytes are. Requests and responses look alike
 * on the wire, so the decoder has to be told which of them it hears. Not safe for use by several threads.
 *
 * <p>A frame ends by silence alone: whoever owns time calls {@link #onSilence} before the next byte, with the whole
 * silence since the last character, once or several times as it grows; shorter silences than t1.5 need not be told.
 * Bytes before the first silence of t3.5 are dropped, since they may be the rest of a frame (MODBUS over serial line
 * V1.02, figure 14).
 */
public final class ModbusDecoder {

    /** Who is heard. */
    public enum Role {
        /** The controller: frames are requests. */
        REQUESTS,
        /** The nodes: frames are responses. */
        RESPONSES
    }

    private static final Decoded<ModbusFrame> NEED_MORE = new Decoded.NeedMore<>();
    private static final int SHORTEST = 4;

    private final Role role;
    private final int characterGap;
    private final int frameGap;
    private final byte[] frame = new byte[ModbusFrame.LONGEST];
    private int received;
    private boolean synchronised;
    private boolean gapSeen;
    private boolean gapInside;

    /** A decoder for one baud rate and format, waiting for its first silence. */
    public ModbusDecoder(Role role, int baud, CharacterFormat format) {
        this.role = role;
        this.characterGap = ModbusTiming.characterGapTenthsOfBit(baud, format);
        this.frameGap = ModbusTiming.frameGapTenthsOfBit(baud, format);
    }

    /** Takes the next byte, of which the low eight bits count. */
    public Decoded<ModbusFrame> onByte(int next) {
        gapInside |= gapSeen;
        if (received < ModbusFrame.LONGEST) {
            frame[received] = (byte) next;
        }
        // held at the top, so that a stream without any silence cannot wrap it round
        received = Math.min(received + 1, Integer.MAX_VALUE - 1);
        return NEED_MORE;
    }

    /**
     * Takes notice of a silence.
     *
     * @param tenthsOfBit since the end of the last character, 0 or more
     */
    public Decoded<ModbusFrame> onSilence(int tenthsOfBit) {
        if (tenthsOfBit < 0) {
            throw new IllegalArgumentException("silence must not be negative: tenthsOfBit=" + tenthsOfBit);
        }
        if (tenthsOfBit < frameGap) {
            gapSeen |= tenthsOfBit > characterGap && received > 0;
            return NEED_MORE;
        }
        Decoded<ModbusFrame> ended = received == 0 ? NEED_MORE : ended();
        received = 0;
        synchronised = true;
        gapSeen = false;
        gapInside = false;
        return ended;
    }

    private Decoded<ModbusFrame> ended() {
        if (!synchronised) {
            return new Decoded.Rejected<>(Reason.NOT_SYNCHRONISED, received);
        }
        if (gapInside) {
            return new Decoded.Rejected<>(Reason.GAP_INSIDE, received);
        }
        if (received < SHORTEST) {
            return new Decoded.Rejected<>(Reason.TOO_SHORT, received);
        }
        if (received > ModbusFrame.LONGEST) {
            return new Decoded.Rejected<>(Reason.TOO_LONG, received);
        }
        if (Adu.check(frame, received) != 0) {
            return new Decoded.Rejected<>(Reason.BAD_CHECK, received);
        }
        return role == Role.REQUESTS
                ? new RequestReader(frame, received).read()
                : new ResponseReader(frame, received).read();
    }
}
