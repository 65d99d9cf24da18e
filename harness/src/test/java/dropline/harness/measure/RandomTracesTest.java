package dropline.harness.measure;

import static dropline.harness.measure.SmallPit.GEAR;
import static dropline.harness.measure.SmallPit.GEAR_LAMP;
import static dropline.harness.measure.SmallPit.LEFT;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Random traces against a plain account kept beside them: every change in a list, nothing forgotten, nothing clever.
 */
class RandomTracesTest {
    private static final int TRACES = 300;
    private static final int STEPS = 2_000;

    private record Change(int serial, long atNanos, boolean undone) {}

    @Test
    void latenciesAgreeWithAPlainAccountAndStagesAddUp() {
        for (long seed = 1; seed <= TRACES; seed++) {
            check(seed);
        }
    }

    private static void check(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        SegmentMeasures measures = SmallPit.measures();
        SmallPit.start(measures);
        List<Change> waiting = new ArrayList<>();
        List<Change> unsent = new ArrayList<>();
        long now = 2 * SmallPit.MS;
        int serial = 1;
        int sentSerial = 1;
        int carried = 1;
        int applied = 1;
        long heard = 0;
        long value = 0;
        long sentValue = 0;
        long sum = 0;
        long max = 0;
        long count = 0;
        for (int step = 0; step < STEPS; step++) {
            now += random.nextInt(1, 2_000_000);
            switch (random.nextInt(6)) {
                case 0 -> {
                    value = value == 0 ? random.nextInt(1, 4) : 0;
                    measures.stateChanged(now, GEAR, ++serial, value);
                    unsent.add(new Change(serial, now, false));
                }
                case 1 -> {
                    measures.stateSent(now);
                    boolean undone = value == sentValue;
                    for (Change change : unsent) {
                        waiting.add(new Change(change.serial(), change.atNanos(), undone));
                    }
                    unsent.clear();
                    sentValue = value;
                    if (serial > sentSerial && random.nextInt(4) > 0) {
                        measures.queued(now, LEFT, GEAR, serial);
                    }
                    sentSerial = serial;
                }
                case 2 -> {
                    carried = sentSerial;
                    measures.carried(now, LEFT, GEAR, carried, step);
                    heard = now + 1;
                }
                case 3 -> {
                    if (carried > applied) {
                        applied = carried;
                        measures.applied(now, GEAR_LAMP, applied, heard);
                    }
                }
                default -> {
                    measures.shown(now, GEAR_LAMP, applied);
                    long oldest = Long.MAX_VALUE;
                    for (Change change : waiting) {
                        if (change.serial() <= applied && !change.undone()) {
                            oldest = Math.min(oldest, change.atNanos());
                        }
                    }
                    int shown = applied;
                    waiting.removeIf(change -> change.serial() <= shown);
                    if (oldest != Long.MAX_VALUE) {
                        sum += now - oldest;
                        max = Math.max(max, now - oldest);
                        count++;
                    }
                }
            }
        }
        measures.ended(now);
        SlotMeasure lamp = SmallPit.slot(measures, GEAR_LAMP);
        assertEquals(count, lamp.latency().count(), "seed " + seed);
        assertEquals(max, lamp.latency().maxNanos(), "seed " + seed);
        long stages = 0;
        long worst = 0;
        for (int stage = 0; stage < SlotMeasure.STAGES; stage++) {
            assertTrue(lamp.stageSumNanos(stage) >= 0 && lamp.worstStageNanos(stage) >= 0, "seed " + seed);
            stages += lamp.stageSumNanos(stage);
            worst += lamp.worstStageNanos(stage);
        }
        assertEquals(sum, stages, "seed " + seed);
        assertEquals(max, worst, "seed " + seed);
    }
}
