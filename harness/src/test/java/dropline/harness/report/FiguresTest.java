package dropline.harness.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class FiguresTest {
    @ParameterizedTest
    @CsvSource({
        "0, 0 ms",
        "1500, 1.5 us",
        "86806, 87 us",
        "3424000, 3.42 ms",
        "61300000, 61.3 ms",
        "100000000, 100 ms",
        "1254000000, 1.25 s",
        "-20000, -20 us"
    })
    void timesHaveAboutThreeFigures(long nanos, String text) {
        assertEquals(text, Figures.time(nanos));
    }

    @ParameterizedTest
    @CsvSource({"247120000000, 4:07.120", "3723000000000, 1:02:03.000", "999600, 0:00.001"})
    void instantsAreReadOnAClock(long nanos, String text) {
        assertEquals(text, Figures.instant(nanos));
    }

    @ParameterizedTest
    @CsvSource({"612000000000, 10 min 12 s", "90000000000, 90 s", "3600000000000, 1 h", "1500000000, 1.50 s"})
    void durationsAreRounded(long nanos, String text) {
        assertEquals(text, Figures.duration(nanos));
    }

    @Test
    void marginsCarryTheirSign() {
        assertEquals("+38.7 ms", Figures.margin(38_700_000));
        assertEquals("-43.8 ms", Figures.margin(-43_800_000));
    }

    @Test
    void thousandsStandApart() {
        assertEquals("15,776", Figures.count(15_776));
        assertEquals("-1,000,000", Figures.count(-1_000_000));
        assertEquals("999", Figures.count(999));
    }

    @Test
    void marksOfAnAxisAreRoundAndStayOnIt() {
        for (long end = 1; end < 20_000_000_000_000L; end = end * 7 / 3 + 1) {
            long limit = end;
            for (Tick tick : Tick.along(end, 100, 4)) {
                assertTrue(tick.at() <= 100.0, () -> "end=" + limit + " tick=" + tick);
            }
            assertTrue(Tick.along(end, 100, 4).size() <= 6, () -> "end=" + limit);
        }
    }
}
