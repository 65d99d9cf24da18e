package dropline.protocol;

/**
 * What a decoder makes of the byte, or the silence, it was just given. A wrong frame is ordinary on a shared wire, so
 * it is a result and never an exception.
 *
 * @param <F> the kind of frame
 */
public sealed interface Decoded<F> {

    /** No frame has ended here. */
    record NeedMore<F>() implements Decoded<F> {}

    /**
     * A frame has ended, and it is sound.
     *
     * @param bytesUsed characters on the wire, delimiter and checks included
     */
    record Complete<F>(F frame, int bytesUsed) implements Decoded<F> {}

    /**
     * Characters were dropped.
     *
     * @param bytesDropped how many, a delimiter included
     */
    record Rejected<F>(Reason reason, int bytesDropped) implements Decoded<F> {}

    /** Why characters were dropped. */
    enum Reason {
        /** They came before the decoder had found the beginning of a frame. */
        NOT_SYNCHRONISED,
        /** Fewer than the shortest frame has. */
        TOO_SHORT,
        /** More than the longest frame may have. */
        TOO_LONG,
        /** A silence inside the frame, longer than the protocol allows. */
        GAP_INSIDE,
        /** The byte stuffing contradicts itself. */
        BAD_STUFFING,
        /** The check at the frame's end does not match. */
        BAD_CHECK,
        /** A header or function code that no frame has. */
        BAD_KIND,
        /** An address that this kind of frame cannot have. */
        BAD_ADDRESS,
        /** The length does not fit what the frame says it holds. */
        BAD_LENGTH,
        /** A field holds a value that the protocol forbids. */
        BAD_VALUE
    }
}
