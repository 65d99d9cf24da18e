package dropline.harness.json;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.clock.BaudStanding;
import dropline.bus.rule.Rule;
import dropline.bus.rule.Ruling;
import dropline.bus.rule.Unit;
import dropline.harness.size.BaudCurve;
import dropline.harness.size.Fared;
import dropline.harness.size.SizeResult;
import dropline.harness.size.Tight;
import dropline.harness.size.TimeAnswer;
import dropline.harness.verdict.Recording;
import dropline.harness.verdict.RestsOn;
import dropline.harness.verdict.Stage;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.json.JsonMapper;

/** The JSON document against its description in docs/size-json.md. */
final class SizeJsonTest {
    @Test
    void holdsWhatThePageSaysAndNothingElse() throws IOException {
        StringWriter text = new StringWriter();
        SizeJson.write(result(), text);

        Set<String> unseen = JsonPage.read(
                        "size-json.md", Set.of("tightest", "beyond", "boundNanos", "half", "twice", "tried"))
                .hold(new JsonMapper().readTree(text.toString()));

        assertEquals(Set.of(), unseen);
    }

    private static SizeResult result() {
        Fared fared = new Fared("Oil", false, 3, 40, 60, 70, 100, 0, false, Stage.QUEUE);
        Tight tight = new Tight(fared, "oil-board", 95);
        Tight open = new Tight(fared, null, Long.MAX_VALUE);
        Ruling broken = Ruling.of(new AtMostThree(), "front", 4, 3, "counted");
        return new SizeResult(
                SizeResult.VERSION,
                "test",
                "pit",
                "front",
                new Recording("flight", 1000),
                0,
                500,
                1,
                20,
                0.2,
                500_000,
                4,
                1,
                4,
                243,
                List.of("Oil"),
                3,
                SizeResult.LimitedBy.TIME,
                List.of(fared),
                new TimeAnswer(3, 4, 5, true, true, tight, open, 2),
                List.of(new SizeResult.Ruled("copper", 3, List.of(broken))),
                List.of(new BaudCurve(
                        500_000,
                        4,
                        2,
                        5,
                        null,
                        List.of(new BaudCurve.Point(4, "Oil", 60, 70, 100, false)),
                        List.of(new BaudCurve.Misfit("oil-board", 0.021, BaudStanding.OFF)))),
                List.of(new SizeResult.Buys("a faster link", 8, tight)),
                List.of(new SizeResult.GuessedNumber("reply-gap", "200 us", "pit.yaml:3:1", 5, null)),
                List.of(new SizeResult.CoarseMotion("Oil", "needle", 60, 10, 6, "deg")),
                List.of("1 bad row was left out."),
                new RestsOn(1, 2, 3, 4, null));
    }

    /** A rule for the test. */
    private static final class AtMostThree implements Rule {
        @Override
        public String name() {
            return "AT_MOST_THREE";
        }

        @Override
        public String title() {
            return "panels";
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
