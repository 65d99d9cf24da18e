package dropline.protocol.custom;

import dropline.protocol.custom.FrameLayout.Kind;
import java.util.List;

/**
 * What a frame says.
 *
 * @param address who is meant or who replies; {@link #NONE} where the frame does not say
 * @param counter the sequence number as it travels; {@link #NONE} where the frame has none
 * @param items signals or controls in the order sent
 */
public record CustomFrame(Kind kind, int address, int counter, List<Item> items) {
    /** In place of a number that a frame does not hold. */
    public static final int NONE = -1;

    /**
     * One signal or control.
     *
     * @param number as written in the pit file; {@link #NONE} where only its place says which it is
     */
    public record Item(int number, long value) {}

    public CustomFrame {
        items = List.copyOf(items);
    }
}
