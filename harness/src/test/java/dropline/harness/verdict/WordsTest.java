package dropline.harness.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Figures as people read them. */
class WordsTest {
    @Test
    void timesCarryTheUnitThatSuitsThem() {
        assertEquals("0 ns", Words.time(0));
        assertEquals("86.8 us", Words.time(86_806));
        assertEquals("1 ms", Words.time(999_950));
        assertEquals("38 ms", Words.time(38_000_000));
        assertEquals("61.3 ms", Words.time(61_312_000));
        assertEquals("100 ms", Words.time(100_000_000));
        assertEquals("1 s", Words.time(999_950_000));
        assertEquals("1.25 s", Words.time(1_250_000_000));
        assertEquals("600 s", Words.time(600_000_000_000L));
    }

    @Test
    void sharesKeepTheirNoughts() {
        assertEquals("80%", Words.share(0.7997));
        assertEquals("100%", Words.share(1));
        assertEquals("10%", Words.share(0.1));
        assertEquals("8%", Words.share(0.08));
        assertEquals("0.4%", Words.share(0.004));
        assertEquals("0%", Words.share(0));
    }

    @Test
    void longListsOfNamesAreCutShort() {
        assertEquals("a", Words.names(List.of("a"), 3));
        assertEquals("a and b", Words.names(List.of("a", "b"), 3));
        assertEquals("a, b and c", Words.names(List.of("a", "b", "c"), 3));
        assertEquals("a, b, c and 2 more", Words.names(List.of("a", "b", "c", "d", "e"), 3));
    }

    @Test
    void oneThingIsSingular() {
        assertEquals("1 panel", Words.count(1, "panel"));
        assertEquals("0 panels", Words.count(0, "panel"));
    }
}
