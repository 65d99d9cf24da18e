package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dropline.bus.chance.Distribution;
import dropline.harness.yaml.Place;
import dropline.harness.yaml.Report;
import dropline.harness.yaml.Tree;
import dropline.harness.yaml.TreeReader;
import dropline.protocol.CharacterFormat;
import dropline.protocol.sized.Sized.ReplyChoice;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class TypesTest {

    @ParameterizedTest
    @CsvSource({
        "120 us, 120000",
        "120us, 120000",
        "1.5 ms, 1500000",
        "2 s, 2000000000",
        "3 min, 180000000000",
        "0, 0",
        "120 µs, 120000"
    })
    void aTimeIsReadInNanoseconds(String text, long nanos) {
        assertEquals(Optional.of(nanos), read(Times.time(0, Times.HOUR), text));
    }

    @ParameterizedTest
    @CsvSource({
        "20, MISSING_UNIT",
        "20 mm, WRONG_UNIT",
        "soon, WRONG_TYPE",
        "2 h, OUT_OF_RANGE",
        "-1 us, OUT_OF_RANGE",
        "0.5 ns, OUT_OF_RANGE",
        "999999999999999999 h, OUT_OF_RANGE"
    })
    void aTimeThatIsNoneSaysWhy(String text, String code) {
        assertEquals(code, code(Times.time(0, Times.HOUR), text));
    }

    @ParameterizedTest
    @CsvSource({"500 kbaud, 500000", "115200 baud, 115200", "76.8 kbaud, 76800", "1 Mbaud, 1000000"})
    void aBaudRateIsReadInBitsASecond(String text, long baud) {
        assertEquals(Optional.of(baud), read(BusKeys.BAUD.type(), text));
    }

    @Test
    void aRateIsThePeriodItMeans() {
        assertEquals(Optional.of(40_000_000L), read(Schema.STATE_RATE.type(), "25 Hz"));
        assertEquals(Optional.of(0L), read(Schema.STATE_RATE.type(), "as recorded"));
        assertEquals("MISSING_UNIT", code(Schema.STATE_RATE.type(), "25"));
    }

    @Test
    void aRandomTimeIsConstantASpanOrABaseWithATail() {
        Type<Distribution> type = Times.distribution();

        assertEquals(Optional.of(Distribution.constant(100_000)), read(type, "100 us"));
        assertEquals(Optional.of(Distribution.uniform(100_000, 300_000)), read(type, "100..300 us"));
        assertEquals(Optional.of(Distribution.uniform(100_000, 2_000_000)), read(type, "100 us .. 2 ms"));
        assertEquals(
                Optional.of(Distribution.exponential(100_000, 50_000, 2_000_000)),
                read(type, "100 us + exponential 50 us, at most 2 ms"));
        assertEquals(
                Optional.of(Distribution.exponential(100_000, 50_000, Long.MAX_VALUE)),
                read(type, "100 us + exponential 50 us"));
    }

    @ParameterizedTest
    @CsvSource({
        "300..100 us, IMPOSSIBLE_RANGE",
        "100 us + exponential 50, MISSING_UNIT",
        "'100 us + exponential 50 us, at most 20 us', IMPOSSIBLE_RANGE",
        "100, MISSING_UNIT",
        "100..200, MISSING_UNIT"
    })
    void aRandomTimeThatIsNoneSaysWhy(String text, String code) {
        assertEquals(code, code(Times.distribution(), text));
    }

    @Test
    void aFormatIsDataBitsParityAndStopBits() {
        assertEquals(Optional.of(CharacterFormat.EIGHT_E_ONE), read(Words.format(), "8E1"));
        assertEquals("WRONG_TYPE", code(Words.format(), "8X1"));
    }

    @Test
    void sharesOfRepliesAddUpToOneHundredPercent() {
        assertEquals(
                Optional.of(List.of(new ReplyChoice(8, 0.8), new ReplyChoice(14, 0.2))),
                replies("{8: 80%, 14: 20%}", new Report()));

        Report report = new Report();
        replies("{8: 80%, 14: 10%}", report);
        assertEquals("shares that add up to 90%", report.list().get(0).found());
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0 ns",
        "1000, 1 us",
        "1500000, 1.5 ms",
        "20000000, 20 ms",
        "3600000000000, 1 h",
        "1234567, 1234.567 us"
    })
    void aTimeIsWrittenInTheUnitThatSuitsIt(long nanos, String text) {
        assertEquals(text, Measure.time().write(nanos));
    }

    private static Optional<List<ReplyChoice>> replies(String yaml, Report report) {
        Tree tree = TreeReader.read("x", yaml, report).orElseThrow();
        return new Replies().read(tree, "reply", report);
    }

    private static <T> Optional<T> read(Type<T> type, String text) {
        return type.read(new Tree.Scalar(text, false, new Place("x", 1, 1)), "key", new Report());
    }

    private static <T> String code(Type<T> type, String text) {
        Report report = new Report();
        assertEquals(Optional.empty(), type.read(new Tree.Scalar(text, false, new Place("x", 1, 1)), "key", report));
        return report.list().get(0).code();
    }
}
