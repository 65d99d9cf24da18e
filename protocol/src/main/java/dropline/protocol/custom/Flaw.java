package dropline.protocol.custom;

import dropline.protocol.custom.FrameLayout.Kind;
import org.jspecify.annotations.Nullable;

/**
 * One thing wrong with a layout, or worth knowing of it.
 *
 * @param code what it is
 * @param frame the frame concerned; null where it is the layout as a whole
 * @param field index of the field concerned; {@link #NONE} where it is the frame as a whole
 * @param part index of the part of an item concerned; {@link #NONE} where it is no part
 * @param found what there is
 * @param expected what would be right
 * @param fix what to do
 */
public record Flaw(Code code, @Nullable Kind frame, int field, int part, String found, String expected, String fix) {
    /** In place of an index. */
    public static final int NONE = -1;

    /** What can be wrong with a layout as a whole. */
    public enum Code {
        FRAME_MISSING("a frame that must be there is missing"),
        FIELD_MISSING("a frame lacks a field it needs"),
        FIELD_TWICE("a frame has a field twice that it can have once"),
        ITEM_WRONG("an item of signals or controls cannot be read back"),
        CHECK_RANGE("a check covers itself, or what is only known after it"),
        DOES_NOT_HOLD("a number does not fit in the place it has"),
        NOT_TOLD_APART("two frames can look the same"),
        ESCAPE_CLASH("an escaped byte still looks like a start, end or escape byte"),
        DELIMITER_INSIDE("a byte inside a frame looks like its start or end"),
        LENGTH_UNKNOWN("a receiver cannot know where a frame ends"),
        WIDTH_UNKNOWN("a receiver cannot know where a number ends"),
        FRAME_TOO_LONG("a frame is longer than the longest"),
        /** Worth knowing, not wrong: builders live with it. */
        DELIMITER_MAY_OCCUR("a value inside a frame can look like its start or end"),
        /** Worth knowing, not wrong. */
        REPLIES_UNMARKED("a node can take another's reply for a request"),
        /** Worth knowing, not wrong. */
        NO_CHECK("nothing tells a damaged frame from a sound one");

        private final String words;

        Code(String words) {
            this.words = words;
        }

        /** What it means, in a few words. */
        public String words() {
            return words;
        }
    }

    static Flaw of(Code code, @Nullable Kind frame, int field, String found, String expected, String fix) {
        return new Flaw(code, frame, field, NONE, found, expected, fix);
    }

    /** Whether the layout can be used all the same. */
    public boolean isCaution() {
        return code == Code.DELIMITER_MAY_OCCUR || code == Code.REPLIES_UNMARKED || code == Code.NO_CHECK;
    }

    @Override
    public String toString() {
        return (frame == null ? "" : frame.word() + ": ") + code + ": " + found + "; expected " + expected;
    }
}
