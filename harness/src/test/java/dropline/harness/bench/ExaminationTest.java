package dropline.harness.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.harness.verdict.Outcome;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class ExaminationTest {
    private static final int BOARDS = 50;
    private static final int EXAMINED = 1;

    /** Its controls, as the layout numbers them: two for each of three boards. */
    private static final int TOGGLE = 2;

    private static final int ENCODER = 3;

    /** What the examination may be off by: half a bit, and the step in which it closes in. */
    private static final long STEP_NANOS = 600;

    @Test
    void goodBoardsPassAndAreMeasuredBack() throws IOException {
        for (long seed = 1; seed <= BOARDS; seed++) {
            ModelledBoard board = new ModelledBoard(seed);

            BenchResult result = board.examined(seed, List.of());

            String note = "seed " + seed + "\n" + BenchText.of(result);
            assertTrue(result.items().stream().noneMatch(item -> item.outcome() == Outcome.FAIL), note);
            Passport passport = result.passport();
            long bit = 1_000_000_000L / board.subject.on().baud();
            assertTrue(passport.leastGapNanos() >= board.leastGap - bit, note);
            assertTrue(passport.mostGapNanos() <= board.mostGap + bit, note);
            // of a hundred replies some come near both ends
            long tenth = (board.mostGap - board.leastGap) / 10 + bit;
            assertTrue(passport.leastGapNanos() - board.leastGap <= tenth, note);
            assertTrue(board.mostGap - passport.mostGapNanos() <= tenth, note);
            if (board.subject.on().silenceNanos() == 0) {
                long tail = passport.releaseTailNanos().orElseThrow();
                assertTrue(Math.abs(tail - board.releaseTail) <= STEP_NANOS + bit, note);
            }
            // found by polling: off by a poll that goes unanswered
            long boot = passport.bootNanos().orElseThrow();
            assertTrue(boot >= ModelledBoard.BOOT_NANOS, note);
            assertTrue(boot <= ModelledBoard.BOOT_NANOS + 3 * board.timeOut() + board.mostGap, note);
            boolean says = seed % 2 == 1 && board.subject.on().protocol().reportsStatus();
            assertEquals(says ? ModelledBoard.FIRMWARE : null, passport.firmware(), note);
            assertEquals(Outcome.PASS, outcome(result, "off-rate"), note);
            assertEquals(Outcome.PASS, outcome(result, "controls"), note);
        }
    }

    private static Outcome outcome(BenchResult result, String item) {
        return result.items().stream()
                .filter(each -> each.name().equals(item))
                .findFirst()
                .orElseThrow()
                .outcome();
    }

    private static Fault chance(FaultKind kind, double rate, long amount) {
        return new Fault(kind, 0, EXAMINED, -1, -1, 0, Fault.TO_THE_END, rate, amount);
    }

    private static Fault steady(FaultKind kind, int other, long amount) {
        return new Fault(kind, 0, EXAMINED, -1, other, 0, Fault.TO_THE_END, 0, amount);
    }

    private static Fault often(FaultKind kind, double perSecond, long amount) {
        return new Fault(kind, 0, EXAMINED, -1, -1, 0, Fault.TO_THE_END, perSecond, amount);
    }

    /** One firmware fault each, of every kind that shows over a link. */
    private static List<Fault> firmwareFaults() {
        List<Fault> faults = new ArrayList<>();
        faults.add(steady(FaultKind.DEAD_NODE, -1, 0));
        faults.add(steady(FaultKind.SWAPPED_PAIR, -1, 0));
        faults.add(steady(FaultKind.WRONG_BAUD, -1, 38_400));
        faults.add(steady(FaultKind.WRONG_BAUD, -1, 2_000_000));
        faults.add(steady(FaultKind.CLOCK_OFF, -1, 60_000));
        faults.add(steady(FaultKind.CLOCK_OFF, -1, -60_000));
        faults.add(chance(FaultKind.DRIVER_ENABLED_LATE, 1, 5_000_000));
        faults.add(chance(FaultKind.DRIVER_ENABLED_LATE, 0.2, 5_000_000));
        faults.add(chance(FaultKind.DRIVER_RELEASED_EARLY, 1, 700_000));
        faults.add(chance(FaultKind.DRIVER_RELEASED_EARLY, 0.2, 700_000));
        faults.add(chance(FaultKind.DRIVER_RELEASED_LATE, 1, 4_000_000));
        faults.add(chance(FaultKind.DRIVER_RELEASED_LATE, 1, 9_000_000));
        faults.add(chance(FaultKind.REPLY_TOO_SOON, 1, 1));
        faults.add(chance(FaultKind.REPLY_TOO_SOON, 0.2, 1));
        faults.add(new Fault(FaultKind.ANSWERS_ANOTHER, 0, EXAMINED, -1, 0, 0, Fault.TO_THE_END, 1, 0));
        faults.add(steady(FaultKind.DUPLICATE_ADDRESS, 0, 0));
        faults.add(often(FaultKind.LOOP_STALL, 4, 60_000_000));
        faults.add(often(FaultKind.BLACKOUT, 4, 60_000_000));
        faults.add(often(FaultKind.RESET, 2, 60_000_000));
        faults.add(often(FaultKind.BABBLING_NODE, 40, 30));
        faults.add(chance(FaultKind.EAVESDROPPER, 1, 0));
        faults.add(new Fault(FaultKind.ENCODER_SKIPS, 0, EXAMINED, ENCODER, -1, 0, Fault.TO_THE_END, 0.3, 0));
        faults.add(new Fault(FaultKind.SWITCH_FLICKERS, 0, EXAMINED, TOGGLE, -1, 0, Fault.TO_THE_END, 3, 0));
        faults.add(chance(FaultKind.COMMON_WIRE_LIFTED, 0.3, 0));
        return faults;
    }

    @Test
    void eachFirmwareFaultFailsAnItemThatNamesIt() throws IOException {
        List<String> missed = new ArrayList<>();
        List<Fault> faults = firmwareFaults();
        for (int i = 0; i < faults.size(); i++) {
            Fault fault = faults.get(i);
            ModelledBoard board = new ModelledBoard(100 + i);

            BenchResult result = board.examined(i, List.of(fault));

            boolean named = false;
            for (Item item : result.items()) {
                named |= item.suspects().contains(fault.kind().word());
            }
            if (!named || result.outcome() != Outcome.FAIL) {
                missed.add(fault + " on board " + (100 + i) + " of "
                        + board.subject.on().protocol().name() + "\n" + BenchText.of(result));
            }
        }

        assertTrue(faults.size() >= 20, "faults: " + faults.size());
        assertEquals(List.of(), missed);
    }

    @Test
    void theSameBoardAndSeedGiveTheSameResult() throws IOException {
        assertEquals(
                BenchText.of(new ModelledBoard(3).examined(3, List.of())),
                BenchText.of(new ModelledBoard(3).examined(3, List.of())));
    }
}
