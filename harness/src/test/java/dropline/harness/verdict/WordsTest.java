package dropline.harness.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class WordsTest {

    @ParameterizedTest
    @CsvSource({"0.8, 80%", "1, 100%", "0.805, 80%", "0.0042, 0.4%", "0.05, 5%", "0, 0%"})
    void sharesKeepTheZerosThatCount(double share, String text) {
        assertEquals(text, Words.share(share));
    }

    @ParameterizedTest
    @CsvSource({"150000000, 150 ms", "86800, 86.8 us", "20000, 20 us", "1250000000, 1.25 s", "999, 999 ns"})
    void timesKeepTheZerosThatCount(long nanos, String text) {
        assertEquals(text, Words.time(nanos));
    }
}
