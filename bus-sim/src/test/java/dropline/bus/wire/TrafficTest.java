package dropline.bus.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.chance.Draws;
import dropline.bus.clock.UartClock;
import dropline.bus.trace.TraceSink;
import dropline.protocol.CharacterFormat;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class TrafficTest {
    private static final int KEPT = 4096;
    private static final long SEED = 23;

    private final Traffic traffic = new Traffic();
    private final Frame frame =
            new Frame(TraceSink.CONTROLLER, 0, UartClock.exact(250_000), CharacterFormat.EIGHT_N_ONE);

    /** The last transmissions, counted one by one. */
    private static long begun(List<long[]> all, long atNanos) {
        long count = 0;
        for (long[] one : all.subList(0, Math.max(0, all.size() - KEPT))) {
            count += one[1];
        }
        for (long[] one : all.subList(Math.max(0, all.size() - KEPT), all.size())) {
            long since = atNanos - one[0];
            count += since < 0 ? 0 : Math.min(one[1], since / one[2] + 1);
        }
        return count;
    }

    @Test
    void countsWhatCountingOneByOneCounts() {
        List<long[]> all = new ArrayList<>();
        long at = 0;
        for (int i = 0; i < 3 * KEPT; i++) {
            int chars = 1 + (int) (Draws.draw(SEED, 2L * i) * 40);
            frame.time(at, chars, 0, 0);
            traffic.add(frame);
            all.add(new long[] {at, chars, frame.charNanos()});
            at = frame.endNanos + (long) (Draws.draw(SEED, 2L * i + 1) * 100_000);
            if (i % 97 == 0) {
                long reached = at;
                for (long back = 1; back < 4 * reached; back *= 3) {
                    long asked = reached - back;
                    assertEquals(begun(all, asked), traffic.begun(asked), () -> "seed " + SEED + " at " + asked);
                }
            }
        }
    }

    @Test
    void nothingSaidIsNothingCounted() {
        assertEquals(0, traffic.completed(5));
        assertEquals(0, traffic.begun(5));
    }
}
