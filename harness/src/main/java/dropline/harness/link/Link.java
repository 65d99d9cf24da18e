package dropline.harness.link;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/**
 * A way to a pair that owns its clock. One thread uses it; nothing here blocks longer than it is told to.
 *
 * <p>A real link's instants are the host's: a byte is dated when the host had it, which is later than it ended on the
 * wire by whatever adapter and operating system add. A simulated link's instants are exact.
 */
public interface Link extends AutoCloseable {

    /** What its clock says, ns since it was opened. */
    long now();

    /**
     * Sends bytes, one right after the other.
     *
     * @return when they were handed over, ns; a simulated link's first start bit begins then
     * @throws IOException if the link is gone for good, with words for the person; an outage that may end is told by
     *     {@link #await}, and what is sent meanwhile is dropped
     */
    long send(byte[] bytes, int offset, int length) throws IOException;

    /**
     * Waits for what comes next, but not beyond an instant.
     *
     * @param deadlineNanos by its clock
     * @return null if nothing came until then
     * @throws IOException if the link is gone for good, with words for the person
     */
    @Nullable
    Arrival await(long deadlineNanos) throws IOException;

    /** Whether its instants are those of the wire, so that a start bit can be placed where one wants it. */
    boolean isExact();

    /**
     * Whether the boards at its other end are models of what the pit file says, their controls moved by the harness.
     */
    default boolean isModelled() {
        return false;
    }

    /** Whether bytes take their time on a wire; over a network they come and go at once. */
    boolean isOnAWire();

    /**
     * Restarts the boards at its other end, if it has a way to. Whether they do restart is theirs: not every adapter's
     * control line leads to a board.
     *
     * @return whether it has tried
     */
    default boolean restart() {
        return false;
    }

    /**
     * Speaks and hears at another rate from now on.
     *
     * @param baud bits a second
     * @return whether it does; if not, it goes on as before
     */
    default boolean tune(int baud) {
        return false;
    }

    /** Where it leads, in words: {@code COM7 at 250000 baud}. */
    String where();

    /** Lets go of it; may be called twice. */
    @Override
    void close();
}
