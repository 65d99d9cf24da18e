package dropline.harness.finding;

import static dropline.harness.finding.HandTrace.MICRO;
import static dropline.harness.finding.HandTrace.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.finding.Finding.Subject;
import java.util.List;
import org.junit.jupiter.api.Test;

final class FindingsTest {
    private final HandTrace trace = new HandTrace(Tiers.ALL);

    @Test
    void nothingIsWrongWithATraceThatIsAsDescribed() {
        assertEquals(List.of(), trace.rounds(5).state().rounds(5).findings());
        assertEquals(
                List.of(),
                new HandTrace(Tiers.CONTROLLER).rounds(5).state().rounds(5).findings());
    }

    @Test
    void aDriverReleasedEarlyIsMeasuredInBitTimes() {
        trace.rounds(2).poll(2, 2, 150 * MICRO, -4 * MICRO, -38 * MICRO, false).rounds(1);

        Finding finding = only(Cause.DRIVER_RELEASED_EARLY, Subject.NODE, 2);

        assertEquals(
                "Node board-2 (address 12) lets go of the line before its last character is out:"
                        + " 38 us (9.5 bit times at 250000 baud) too soon: the last character is "
                        + "cut, once, at 80.5 ms.",
                finding.sentence().replaceAll("at 8[0-9.]+ ms", "at 80.5 ms"));
        assertEquals(
                "Release the driver in the transmit-complete interrupt, not when the data register is empty.",
                finding.next());
        assertEquals(Confidence.CERTAIN, finding.confidence());
    }

    @Test
    void aDriverEnabledInMidCharacterIsEnabledLate() {
        trace.rounds(2).poll(1, 1, 150 * MICRO, 20 * MICRO, 8 * MICRO, false);

        only(Cause.DRIVER_ENABLED_LATE, Subject.NODE, 1);
    }

    @Test
    void aDriverEnabledLongBeforeItsFrameIsEnabledEarly() {
        trace.rounds(2).poll(1, 1, 150 * MICRO, -120 * MICRO, 8 * MICRO, true);

        only(Cause.DRIVER_ENABLED_EARLY, Subject.NODE, 1);
    }

    @Test
    void aDriverHeldBeyondItsTailIsReleasedLate() {
        trace.rounds(2).poll(3, 3, 150 * MICRO, -4 * MICRO, 900 * MICRO, true);

        only(Cause.DRIVER_RELEASED_LATE, Subject.NODE, 3);
    }

    @Test
    void aDriverThatIsNeverReleasedIsStuck() {
        trace.rounds(2).sink.driverOn(trace.now(), 3);
        trace.silent(0).silent(1).silent(2).silent(3).silent(0).silent(1);

        only(Cause.STUCK_DRIVER, Subject.NODE, 3);
    }

    @Test
    void aReplySoonerThanItsProfileAllowsIsTooSoon() {
        trace.rounds(2).poll(0, 0, 5 * MICRO, -4 * MICRO, 8 * MICRO, true);

        only(Cause.REPLY_TOO_SOON, Subject.NODE, 0);
    }

    @Test
    void aReplyLaterThanAnythingDescribedIsAStalledLoop() {
        trace.rounds(2).poll(0, 0, 2 * MILLI, -4 * MICRO, 8 * MICRO, true);

        only(Cause.LOOP_STALL, Subject.NODE, 0);
    }

    @Test
    void aNodeThatNeverRepliesIsDeadOrFedBackOrItsPairIsSwapped() {
        for (int i = 0; i < 5; i++) {
            trace.poll(0).silent(1).poll(2).poll(3);
        }

        Finding finding = only(Cause.DEAD_NODE, Subject.NODE, 1);

        assertEquals(List.of(Cause.DEAD_NODE, Cause.BACK_FEED, Cause.SWAPPED_PAIR), finding.causes());
        assertTrue(finding.touchesHardware());
        assertEquals(5, finding.count());
        assertEquals(10 * MILLI, finding.firstNanos());
    }

    @Test
    void aNodeThatMishearsOnlyRightAfterRepliesListensToThem() {
        for (int i = 0; i < 6; i++) {
            trace.poll(0).deaf(1).poll(1).poll(2).poll(3).state().state();
        }

        only(Cause.EAVESDROPPER, Subject.NODE, 1);
    }

    @Test
    void repliesForAnotherButNoneOfItsOwnAreADuplicateAddress() {
        for (int i = 0; i < 5; i++) {
            trace.poll(0).poll(2).silent(1).poll(2, 1, 170 * MICRO, -4 * MICRO, 8 * MICRO, true);
        }

        only(Cause.DUPLICATE_ADDRESS, Subject.NODE, 1);
    }

    @Test
    void repliesForAnotherBesideItsOwnAreAnsweringAnother() {
        for (int i = 0; i < 5; i++) {
            trace.rounds(1).poll(2, 1, 170 * MICRO, -4 * MICRO, 8 * MICRO, true);
        }

        only(Cause.ANSWERS_ANOTHER, Subject.NODE, 1);
    }

    @Test
    void aFrameThatAnswersNothingIsBabble() {
        trace.rounds(2).sink.frameStarted(trace.now() - 5 * MILLI, 2, 3, 2, 0, 7);
        trace.sink.frameEnded(trace.now() - 4 * MILLI, 2, 3, 2, 0);
        trace.rounds(1);

        assertEquals(Cause.BABBLING_NODE, trace.findings().get(0).causes().get(0));
    }

    @Test
    void stateFramesNobodyHasWhileAllElseArrivesAreLost() {
        trace.rounds(1)
                .state(0, 1, 2, 3)
                .rounds(1)
                .state()
                .rounds(1)
                .state(0, 1, 2, 3)
                .rounds(1);

        only(Cause.LOST_STATE_FRAME, Subject.SEGMENT, 0);
    }

    @Test
    void oneNodeAloneThatHearsWronglyNowAndThenHasItsCommonWireLifted() {
        trace.rounds(2).deaf(1).rounds(2).deaf(1).rounds(2).state().state(1).rounds(1);

        only(Cause.COMMON_WIRE_LIFTED, Subject.NODE, 1);
    }

    @Test
    void aNodeThatNeverHearsRightHasItsBaudRateOrItsClockWrong() {
        for (int i = 0; i < 5; i++) {
            trace.poll(0).deaf(1).poll(2).poll(3);
        }

        assertEquals(
                List.of(Cause.WRONG_BAUD, Cause.CLOCK_OFF),
                only(Cause.WRONG_BAUD, Subject.NODE, 1).causes());
    }

    @Test
    void allThatRestartTogetherLostTheirSupply() {
        trace.rounds(1);
        for (int node = 0; node < HandTrace.NODES; node++) {
            trace.sink.reset(trace.now(), node, trace.now() + 500 * MILLI);
        }
        trace.silent(0).silent(1);

        only(Cause.BROWN_OUT, Subject.SEGMENT, 0);
    }

    @Test
    void oneThatRestartsAloneIsARestart() {
        trace.rounds(1).sink.reset(trace.now(), 2, trace.now() + 50 * MILLI);
        trace.silent(2).silent(2);

        only(Cause.RESET, Subject.NODE, 2);
    }

    @Test
    void aSilentNodeSeenFromTheControllerAloneMayBeManyThingsAndTheNextTestIsNamed() {
        HandTrace seen = new HandTrace(Tiers.CONTROLLER);
        for (int i = 0; i < 6; i++) {
            seen.poll(0).silent(1).poll(2).poll(3);
        }

        Finding finding = seen.findings().get(0);

        assertTrue(finding.causes().containsAll(List.of(Cause.DEAD_NODE, Cause.WRONG_BAUD, Cause.SWAPPED_PAIR)));
        assertTrue(finding.next().contains("driver-enable"), finding.next());
        assertEquals(Tiers.CONTROLLER, finding.tiers());
    }

    private Finding only(Cause cause, Subject subject, int part) {
        List<Finding> findings = trace.findings();
        assertEquals(1, findings.size(), findings::toString);
        Finding finding = findings.get(0);
        assertEquals(cause, finding.causes().get(0), finding::toString);
        assertEquals(subject, finding.subject());
        assertEquals(part, finding.part());
        return finding;
    }
}
