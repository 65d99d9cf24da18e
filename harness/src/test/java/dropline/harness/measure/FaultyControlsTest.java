package dropline.harness.measure;

import static dropline.harness.measure.SmallPit.AXIS;
import static dropline.harness.measure.SmallPit.BUTTON;
import static dropline.harness.measure.SmallPit.ENCODER;
import static dropline.harness.measure.SmallPit.MS;
import static dropline.harness.measure.SmallPit.RIGHT;
import static dropline.harness.measure.SmallPit.TOGGLE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.host.StateBlock;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.run.SegmentRun;
import dropline.bus.trace.TraceSink;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Whole runs with faulty controls, moved at random, against a plain account of the same trace kept in sets. */
class FaultyControlsTest {
    private static final int RUNS = 40;
    private static final long SECOND = 1000 * MS;

    /** Serials moved, sampled and told of one control; nothing forgotten. */
    private static final class Account {
        private final TreeSet<Integer> moved = new TreeSet<>();
        private final TreeSet<Integer> sampled = new TreeSet<>();
        private int told;

        long spurious() {
            return sampled.stream().filter(serial -> !moved.contains(serial)).count();
        }

        long passed() {
            return moved.stream()
                    .filter(serial -> !sampled.contains(serial) && serial < sampled.last())
                    .count();
        }
    }

    @Test
    void spuriousChangesAreCountedAndRealMovesAreTimedAsIfThereWereNone() {
        for (long seed = 1; seed <= RUNS; seed++) {
            Account[] accounts = new Account[4];
            List<ControlMeasure> controls = run(seed, accounts);
            for (int control = TOGGLE; control <= AXIS; control++) {
                String where = "seed " + seed + " control " + control;
                ControlMeasure measure = controls.get(control);
                Account account = accounts[control];
                assertEquals(account.spurious(), measure.spurious(), where);
                assertEquals(account.moved.size(), measure.moves(), where);
                assertTrue(
                        measure.latency().maxNanos() < 60 * MS,
                        where + " took " + measure.latency().maxNanos());
                assertEquals(0, measure.openNanos(), where);
                assertTrue(account.told >= account.moved.last(), where);
            }
            assertEquals(accounts[ENCODER].passed(), controls.get(ENCODER).lostSteps(), "seed " + seed);
            assertEquals(accounts[BUTTON].passed(), controls.get(BUTTON).lostSteps(), "seed " + seed);
            assertEquals(0, controls.get(TOGGLE).lostSteps(), "seed " + seed);
            assertEquals(0, controls.get(AXIS).lostSteps(), "seed " + seed);
            assertTrue(controls.get(ENCODER).lostSteps() > 0, "seed " + seed);
            assertTrue(controls.get(AXIS).spurious() > 1_000, "seed " + seed);
        }
    }

    private static List<ControlMeasure> run(long seed, Account[] accounts) {
        Pit pit = SmallPit.pit();
        SegmentMeasures measures = SmallPit.measures();
        List<Fault> faults = List.of(
                fault(FaultKind.SWITCH_FLICKERS, TOGGLE, 3),
                fault(FaultKind.SWITCH_FLICKERS, BUTTON, 3),
                fault(FaultKind.ENCODER_SKIPS, ENCODER, 0.2),
                fault(FaultKind.NOISY_AXIS, AXIS, 200));
        SegmentRun run = new SegmentRun(pit, 0, seed, faults, new Keeping(measures, accounts));
        run.offer(moves(new SplittableRandom(seed)));
        run.advanceTo(15 * SECOND);
        run.end();
        measures.ended(15 * SECOND);
        assertEquals(4, Layout.of(pit).controls().size());
        return measures.controls();
    }

    /** Every control is moved at random for 10 s and rests for 5 s, the encoder once more after its fault is over. */
    private static StateBlock moves(SplittableRandom random) {
        StateBlock block = new StateBlock();
        int[] values = new int[4];
        for (long at = 10 * MS; at < 10 * SECOND; at += random.nextLong(1, 80) * MS) {
            int control = random.nextInt(4);
            values[control] = control == ENCODER
                    ? values[control] + 1
                    : control == AXIS ? random.nextInt(1_000) : 1 - values[control];
            block.addMove(at, control, values[control]);
        }
        block.addMove(11 * SECOND, ENCODER, values[ENCODER] + 1);
        block.addMove(11 * SECOND, BUTTON, 1);
        return block;
    }

    private static Fault fault(FaultKind kind, int control, double rate) {
        return new Fault(kind, 0, RIGHT, control, -1, 0, 10 * SECOND, rate, 0);
    }

    private static final class Keeping implements TraceSink {
        private final SegmentMeasures measures;
        private final Account[] accounts;

        Keeping(SegmentMeasures measures, Account[] accounts) {
            this.measures = measures;
            this.accounts = accounts;
            for (int i = 0; i < accounts.length; i++) {
                accounts[i] = new Account();
            }
        }

        @Override
        public void controlMoved(long atNanos, int control, int serial, int value) {
            accounts[control].moved.add(serial);
            measures.controlMoved(atNanos, control, serial, value);
        }

        @Override
        public void sampled(long atNanos, int control, int serial) {
            accounts[control].sampled.add(serial);
            measures.sampled(atNanos, control, serial);
        }

        @Override
        public void told(long atNanos, int control, int serial) {
            accounts[control].told = serial;
            measures.told(atNanos, control, serial);
        }
    }
}
