package dropline.harness.size;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Pit;
import dropline.bus.rule.Rule;
import dropline.bus.rule.Ruling;
import dropline.bus.rule.Unit;
import dropline.harness.json.SizeJson;
import dropline.harness.size.SizeResult.LimitedBy;
import dropline.harness.sized.SizePage;
import dropline.harness.sized.SizeText;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

final class SizingTest {
    @Test
    void theNumberIsThatOfTryingEveryNumberWithANodeOfEachKindDead() throws IOException {
        for (String timeOut : List.of("2 ms", "6 ms")) {
            SizedPit pit = SizedPit.addressed(3, timeOut, "25 ms");

            assertEquals(pit.byTryingAll(30), pit.size(2).time().inFirstSeed(), timeOut);
        }
    }

    @Test
    void theAnswerIsTheSameOnOneThreadAndOnFour() throws IOException {
        SizedPit pit = SizedPit.addressed(3, "4 ms", "30 ms").with(0.2, 2);

        SizeResult one = pit.size(1);
        SizeResult four = pit.size(4);

        assertEquals(one, four);
        assertEquals(SizeText.of(one), SizeText.of(four));
        assertEquals(json(one), json(four));
        assertEquals(SizePage.of(one), SizePage.of(four));
    }

    @Test
    void aGreaterMarginNeverAllowsMore() throws IOException {
        int before = Integer.MAX_VALUE;
        for (double margin : new double[] {0, 0.2, 0.5}) {
            int more = SizedPit.addressed(2, "3 ms", "40 ms")
                    .with(margin, 1)
                    .size(2)
                    .more();

            assertTrue(more <= before, margin + ": " + more + " after " + before);
            before = more;
        }
    }

    @Test
    void aDeadNodeCostsPanelsWhereTimeOutsAreLong() throws IOException {
        SizeResult brief = SizedPit.addressed(3, "2 ms", "40 ms").size(2);
        SizeResult lasting = SizedPit.addressed(3, "12 ms", "40 ms").size(2);

        assertTrue(lasting.more() < brief.more(), lasting.more() + " and " + brief.more());
        assertNotNull(Objects.requireNonNull(lasting.time().beyond()).deadNode());
        assertEquals("time-out", lasting.buys().get(0).change().substring(0, 8));
        assertTrue(lasting.buys().get(0).more() > lasting.more());
    }

    @Test
    void whatIsFoundHoldsInEverySeed() throws IOException {
        SizedPit pit = SizedPit.addressed(3, "3 ms", "30 ms").with(0.2, 3);

        TimeAnswer time = pit.size(2).time();

        assertTrue(time.more() <= time.inFirstSeed() && time.inFirstSeed() <= time.mostBySeed(), time.toString());
        assertTrue(time.confirmed());
    }

    /** MODBUS over serial line V1.02, 2.2: addresses 1..247, and no more than 247 nodes. */
    @Test
    void addressesEndAt247() throws IOException {
        SizeResult result = SizedPit.addressed(3, "2 ms", "20 s")
                .replaced("changes: 1", "changes: 0")
                .size(2);

        assertEquals(244, result.more());
        assertEquals(LimitedBy.ADDRESSES, result.limitedBy());
        assertNull(result.time().beyond());
    }

    @Test
    void aBrokenLawStopsWhereTimeWouldNot() throws IOException {
        SizeResult result = SizedPit.addressed(3, "2 ms", "60 ms")
                .with(new AtMostSixBoards())
                .size(2);

        assertEquals(3, result.more());
        assertEquals(LimitedBy.RULES, result.limitedBy());
        assertEquals(7, result.ruled().get(0).broken().get(0).value());
        assertTrue(result.time().more() > 3);
    }

    @Test
    void aPanelThatMissesItsLimitAloneIsNamedAndDoesNotCount() throws IOException {
        SizeResult result = SizedPit.addressed(3, "2 ms", "60 ms")
                .replaced(
                        "lamp: {kind: lamp, shows: light 3}",
                        "slow: {kind: OLED, shows: light 3, refresh-every: 100 ms, refresh-takes: 90 ms,"
                                + " refresh-blocks: nothing}")
                .size(2);

        assertEquals(
                List.of("panel 3"), result.aside().stream().map(Fared::name).toList());
        assertEquals(List.of("panel 1", "panel 2"), result.adding());
        assertTrue(result.more() > 0);
        assertFalse(result.fits());
        assertTrue(result.sentences().stream().anyMatch(s -> s.startsWith("Not counted: panel 3")));
    }

    @Test
    void aSegmentThatIsFullAsItStandsSaysWhatWouldMakeItFit() throws IOException {
        SizedPit pit = SizedPit.addressed(12, "2 ms", "20 ms");
        SizeResult result = new SizedPit(pit.text(), 0.2, 1, List.of(115_200, 500_000), List.of()).size(2);

        assertEquals(-1, result.more());
        assertFalse(result.fits());
        assertTrue(result.headline().contains("not fit as it stands"), result.headline());
        assertTrue(result.curves().get(1).more() >= 0);
        assertTrue(result.sentences().stream().anyMatch(s -> s.contains("500000 baud")), result.sentences()::toString);
    }

    /** 60 degrees a second at 10 updates a second is 6 degrees a step, which looks jittery (common practice). */
    @Test
    void aGaugeStepperFedTenTimesASecondIsSaidToStep() throws IOException {
        SizedPit pit = SizedPit.addressed(2, "2 ms", "400 ms")
                .replaced("light 2: {range: 0..1", "light 2: {unit: deg, range: 0..300")
                .replaced(
                        "lamp: {kind: lamp, shows: light 2}",
                        "needle: {kind: gauge stepper, shows: light 2, speed: 60 deg/s}");

        List<SizeResult.CoarseMotion> ten =
                pit.replaced("every: 20 ms", "every: 100 ms").size(2).coarse();

        assertEquals(1, ten.size());
        assertEquals(6.0, ten.get(0).step(), 1e-9);
        assertEquals(List.of(), pit.size(2).coarse());
    }

    /**
     * A front of 31 panels, each on a board of its own, is ordinary (common practice): 8-bit boards that answer from
     * their loop, 115200 baud, 20 states a second, a tenth of a second to show them.
     */
    @Test
    void aFrontOf31PanelsIsFeasible() throws IOException {
        SizedPit pit = SizedPit.addressed(31, "6 ms", "100 ms")
                .replaced("state: addressed", "state: broadcast")
                .replaced("{every: 20 ms, changes: 1}", "{every: 50 ms, changes: 10}")
                .replaced("profile: plain", "profile: 8-bit loop")
                .replaced("profiles:\n  plain:", "profiles:\n  unused:");

        SizeResult result = pit.size(2);

        assertTrue(result.fits() && result.more() >= 0, SizeText.of(result));
    }

    private static String json(SizeResult result) throws IOException {
        StringWriter text = new StringWriter();
        SizeJson.write(result, text);
        return text.toString();
    }

    /** A law for the test. */
    private static final class AtMostSixBoards implements Limit, Rule {
        @Override
        public String name() {
            return "a test's law";
        }

        @Override
        public List<Ruling> of(Pit pit, int segment) {
            int boards = pit.segments().get(segment).nodes().size();
            return List.of(Ruling.of(this, pit.segments().get(segment).name(), boards, 6, "counted"));
        }

        @Override
        public String title() {
            return "boards";
        }

        @Override
        public Unit unit() {
            return Unit.NUMBER;
        }

        @Override
        public Sense sense() {
            return Sense.AT_MOST;
        }

        @Override
        public String source() {
            return "chosen for this test";
        }

        @Override
        public Weight weight() {
            return Weight.LAW;
        }
    }
}
