package dropline.protocol.custom;

import dropline.protocol.Decoded;
import dropline.protocol.Decoded.Reason;
import java.util.List;

/**
 * Frames that begin with a constant and say how long they are. Every byte is tried as a beginning; what is held back
 * never exceeds the longest frame. Silence means nothing here.
 */
final class CountedDecoder implements CustomDecoder {
    private static final Decoded<CustomFrame> NEED_MORE = new Decoded.NeedMore<>();
    private static final int NO_FRAME = -1;
    private static final int INCOMPLETE = Integer.MAX_VALUE;

    private final Layout layout;
    private final List<FrameLayout> heard;
    private final byte[] held;
    private int count;

    CountedDecoder(Layout layout, List<FrameLayout> heard) {
        this.layout = layout;
        this.heard = heard;
        held = new byte[layout.longest() + 1];
    }

    @Override
    public Decoded<CustomFrame> onByte(int next) {
        held[count++] = (byte) next;
        return more();
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
        Reason reason = Reason.NOT_SYNCHRONISED;
        for (int from = 0; from < count; from++) {
            Decoded<CustomFrame> here = beginning(from);
            if (here instanceof Decoded.Rejected<CustomFrame> rejected) {
                reason = from == 0 ? rejected.reason() : reason;
                continue;
            }
            if (from > 0) {
                drop(from);
                return new Decoded.Rejected<>(reason, from);
            }
            if (here instanceof Decoded.Complete<CustomFrame> complete) {
                drop(complete.bytesUsed());
            }
            return here;
        }
        int dropped = count;
        drop(dropped);
        return dropped == 0 ? NEED_MORE : new Decoded.Rejected<>(reason, dropped);
    }

    /** What begins there: a frame, perhaps one, or none. */
    private Decoded<CustomFrame> beginning(int from) {
        boolean incomplete = false;
        Reason reason = Reason.NOT_SYNCHRONISED;
        for (FrameLayout frame : heard) {
            int chars = chars(frame, from);
            if (chars == INCOMPLETE || chars > count - from) {
                incomplete = true;
            } else if (chars != NO_FRAME) {
                byte[] whole = new byte[chars];
                System.arraycopy(held, from, whole, 0, chars);
                FrameReader reader = new FrameReader(layout, frame, whole, chars);
                CustomFrame read = reader.read();
                if (read != null) {
                    return new Decoded.Complete<>(read, chars);
                }
                reason = reader.reason();
            }
        }
        return incomplete ? NEED_MORE : new Decoded.Rejected<>(reason, 1);
    }

    /** Characters of the frame that begins there, {@link #INCOMPLETE} where it is not known yet. */
    private int chars(FrameLayout frame, int from) {
        int prefix = Math.min(frame.prefixChars(), count - from);
        for (int i = 0; i < prefix; i++) {
            if (!frame.canBe(i, held[from + i] & 0xFF)) {
                return NO_FRAME;
            }
        }
        int slots = frame.items().map(Field.Items::slots).orElse(0);
        if (frame.items().isEmpty() || slots > 0) {
            return frame.chars(slots);
        }
        for (int i = 0; i < frame.itemsIndex(); i++) {
            if (frame.fields().get(i) instanceof Field.Length length) {
                int at = from + frame.offset(i);
                if (at + length.chars() > count) {
                    return INCOMPLETE;
                }
                long counted = length.form().read(new Cursor(held, at, count)) - length.plus();
                long chars = LengthCount.frameChars(frame, i, length, counted);
                return chars < frame.fixedChars() || chars > layout.longest() ? NO_FRAME : (int) chars;
            }
        }
        throw new IllegalStateException("a frame of varying length must have a length field");
    }

    private void drop(int bytes) {
        count -= bytes;
        System.arraycopy(held, bytes, held, 0, count);
    }
}
