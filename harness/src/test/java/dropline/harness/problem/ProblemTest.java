package dropline.harness.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

final class ProblemTest {
    private static final Problem REPLY_GAP = new Problem(
            "left.yaml",
            14,
            16,
            "reply-gap",
            "OUT_OF_RANGE",
            "20us",
            "at least 87us, one character at 115200 baud (line 3)",
            "write reply-gap: 2ms, or raise the baud rate");

    @Test
    void aProblemPrintsPlaceKeyCodeAndThreeLines() {
        assertEquals("""
            left.yaml:14:16: reply-gap: OUT_OF_RANGE
              found:    20us
              expected: at least 87us, one character at 115200 baud (line 3)
              fix:      write reply-gap: 2ms, or raise the baud rate\
            """, REPLY_GAP.text());
    }

    @Test
    void whatIsNotKnownIsLeftOut() {
        Problem empty = new Problem("a.csv", 0, 0, "", "EMPTY_FILE", null, "a header and at least one row", null);

        assertEquals("a.csv: EMPTY_FILE\n  expected: a header and at least one row", empty.text());
    }

    @Test
    void problemsStandInFileOrderAndOnlyOnce() {
        Problem earlier = new Problem("left.yaml", 2, 1, "x", "UNKNOWN_KEY", "x", null, null);
        Problems problems = new Problems();

        problems.add(REPLY_GAP);
        problems.add(earlier);
        problems.add(REPLY_GAP);

        assertEquals(List.of(earlier, REPLY_GAP), problems.list());
        assertTrue(problems.text().startsWith("left.yaml:2:1: x: UNKNOWN_KEY\n  found:    x\n\nleft.yaml:14:16"));
    }

    @Test
    void aColumnWithoutALineIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Problem("a", 0, 3, "", "X", null, null, null));
        assertThrows(IllegalArgumentException.class, () -> new Problem("a", 1, 3, "", "not a code", null, null, null));
    }

    @Test
    void theNearestSpellingIsFoundAndAFarOneIsNot() {
        List<String> keys = List.of("time-out", "retries", "gap");

        assertEquals(Optional.of("retries"), Nearest.to("retires", keys));
        assertEquals(Optional.of("time-out"), Nearest.to("Timeout", keys));
        assertEquals(Optional.empty(), Nearest.to("banana", keys));
    }

    @Test
    void swappedNeighboursAreOneEdit() {
        assertEquals(1, Nearest.distance("abcd", "abdc"));
        assertEquals(3, Nearest.distance("kitten", "sitting"));
        assertEquals(4, Nearest.distance("", "four"));
    }
}
