package dropline.protocol.custom;

import dropline.protocol.Decoded;
import dropline.protocol.Decoded.Reason;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads what stands between two boundaries: whichever of the frames listened for it is. */
final class Contents {
    private final Layout layout;
    private final List<FrameLayout> heard;

    Contents(Layout layout, List<FrameLayout> heard) {
        this.layout = layout;
        this.heard = heard;
    }

    /**
     * The frame in {@code bytes}, from the start byte if there is one up to {@code end}.
     *
     * @param used characters on the wire
     */
    Decoded<CustomFrame> read(byte[] bytes, int end, int used) {
        Reason reason = null;
        for (FrameLayout frame : heard) {
            FrameReader reader = new FrameReader(layout, frame, bytes, end);
            CustomFrame read = reader.read();
            if (read != null) {
                return new Decoded.Complete<>(read, used);
            }
            reason = telling(reason, reader.reason());
        }
        return new Decoded.Rejected<>(reason == null ? Reason.BAD_KIND : reason, used);
    }

    /** Of two reasons the one that says more: that it is another kind of frame says least. */
    private static Reason telling(@Nullable Reason first, Reason second) {
        return first == null || first == Reason.BAD_KIND ? second : first;
    }
}
