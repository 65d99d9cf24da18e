package dropline.harness.recording;

import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * How a recording is read.
 *
 * @param lenient whether bad rows and damaged blocks are skipped and counted instead of ending the reading
 * @param timeUnit the unit of the times of a recording that is text, over what its header says; null to go by the
 *     header, and by seconds where the header names no unit
 */
public record ReadOptions(boolean lenient, @Nullable TimeUnit timeUnit) {

    /** The same, but going by the header's unit of time. */
    ReadOptions byHeader() {
        return new ReadOptions(lenient, null);
    }

    /** Stops at the first bad stretch; goes by the header's unit of time. */
    public static ReadOptions strict() {
        return new ReadOptions(false, null);
    }

    /** Skips and counts what is bad; goes by the header's unit of time. */
    public static ReadOptions skippingBadRows() {
        return new ReadOptions(true, null);
    }
}
