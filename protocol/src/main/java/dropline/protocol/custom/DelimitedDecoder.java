package dropline.protocol.custom;

import dropline.protocol.Decoded;
import dropline.protocol.Decoded.Reason;
import dropline.protocol.custom.Boundary.Delimiters;
import dropline.protocol.custom.Boundary.Escape;

/** Frames that end with a byte, and perhaps begin with one. Silence means nothing here. */
final class DelimitedDecoder implements CustomDecoder {
    private static final Decoded<CustomFrame> NEED_MORE = new Decoded.NeedMore<>();

    private final Delimiters delimiters;
    private final Contents contents;
    private final boolean hasStart;
    private final byte[] content;
    private int received;
    private int onWire;
    private boolean begun;
    private boolean escaped;

    DelimitedDecoder(Layout layout, Delimiters delimiters, Contents contents) {
        this.delimiters = delimiters;
        this.contents = contents;
        hasStart = delimiters.start() != Delimiters.NO_START;
        content = new byte[layout.longest()];
        begin();
    }

    @Override
    public Decoded<CustomFrame> onByte(int next) {
        int value = next & 0xFF;
        if (hasStart && value == delimiters.start()) {
            return started(value);
        }
        onWire = Math.min(onWire + 1, Integer.MAX_VALUE - 1);
        if (value == delimiters.end()) {
            return ended();
        }
        Escape escape = delimiters.escape();
        if (escape != null) {
            if (escaped) {
                value ^= escape.xor();
                escaped = false;
            } else if (value == escape.with()) {
                escaped = true;
                return NEED_MORE;
            }
        }
        if (begun) {
            take(value);
        }
        return NEED_MORE;
    }

    @Override
    public Decoded<CustomFrame> onSilence(int tenthsOfBit) {
        if (tenthsOfBit < 0) {
            throw new IllegalArgumentException("silence must not be negative: tenthsOfBit=" + tenthsOfBit);
        }
        return NEED_MORE;
    }

    @Override
    public Decoded<CustomFrame> more() {
        return NEED_MORE;
    }

    private Decoded<CustomFrame> started(int value) {
        Decoded<CustomFrame> before = NEED_MORE;
        if (delimiters.start() == delimiters.end() && begun) {
            // one byte ends a frame and begins the next, and is counted with the first; two in a row are idle
            boolean shared = received > 1;
            onWire++;
            before = shared ? ended() : NEED_MORE;
            begin();
            onWire = shared ? 0 : 1;
        } else if (onWire > 0) {
            before = new Decoded.Rejected<>(begun ? Reason.TOO_SHORT : Reason.NOT_SYNCHRONISED, onWire);
            begin();
            onWire = 1;
        } else {
            onWire = 1;
        }
        begun = true;
        take(value);
        return before;
    }

    private Decoded<CustomFrame> ended() {
        int length = received;
        int used = onWire;
        boolean whole = begun;
        boolean cut = escaped;
        begin();
        if (length == 0 && used == 1) {
            return NEED_MORE;
        }
        if (!whole) {
            return new Decoded.Rejected<>(Reason.NOT_SYNCHRONISED, used);
        }
        if (cut) {
            return new Decoded.Rejected<>(Reason.BAD_STUFFING, used);
        }
        if (length > content.length - 1) {
            return new Decoded.Rejected<>(Reason.TOO_LONG, used);
        }
        return contents.read(content, length, used);
    }

    private void begin() {
        received = 0;
        onWire = 0;
        begun = !hasStart;
        escaped = false;
    }

    private void take(int value) {
        if (received < content.length) {
            content[received] = (byte) value;
        }
        // held at the top, so that a stream without any end cannot wrap it round
        received = Math.min(received + 1, Integer.MAX_VALUE - 1);
    }
}
