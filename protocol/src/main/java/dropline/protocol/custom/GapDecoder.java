package dropline.protocol.custom;

import dropline.protocol.Decoded;
import dropline.protocol.Decoded.Reason;

/** Frames between silences. */
final class GapDecoder implements CustomDecoder {
    private static final Decoded<CustomFrame> NEED_MORE = new Decoded.NeedMore<>();

    private final Contents contents;
    private final int gapTenthsOfBit;
    private final byte[] content;
    private int received;
    private boolean synchronised;

    GapDecoder(Layout layout, int gapTenthsOfBit, Contents contents) {
        this.gapTenthsOfBit = gapTenthsOfBit;
        this.contents = contents;
        content = new byte[layout.longest()];
    }

    @Override
    public Decoded<CustomFrame> onByte(int next) {
        if (received < content.length) {
            content[received] = (byte) next;
        }
        received = Math.min(received + 1, Integer.MAX_VALUE - 1);
        return NEED_MORE;
    }

    @Override
    public Decoded<CustomFrame> onSilence(int tenthsOfBit) {
        if (tenthsOfBit < 0) {
            throw new IllegalArgumentException("silence must not be negative: tenthsOfBit=" + tenthsOfBit);
        }
        if (tenthsOfBit < gapTenthsOfBit) {
            return NEED_MORE;
        }
        int length = received;
        boolean whole = synchronised;
        received = 0;
        synchronised = true;
        if (length == 0) {
            return NEED_MORE;
        }
        if (!whole) {
            return new Decoded.Rejected<>(Reason.NOT_SYNCHRONISED, length);
        }
        return length > content.length
                ? new Decoded.Rejected<>(Reason.TOO_LONG, length)
                : contents.read(content, length, length);
    }

    @Override
    public Decoded<CustomFrame> more() {
        return NEED_MORE;
    }
}
