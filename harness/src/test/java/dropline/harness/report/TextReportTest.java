package dropline.harness.report;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

final class TextReportTest {
    private static final List<String> LINES =
            TextReport.of(InventedResult.plain()).lines().toList();

    @Test
    void itBeginsWithTheVerdictInASentence() {
        assertTrue(LINES.get(0).startsWith("FAIL. 2 of 36 panels miss their limit;"), () -> LINES.get(0));
    }

    @Test
    void sentencesComeBeforeAdviceAndAdviceBeforeTables() {
        int advice = LINES.indexOf("What to do");
        int panels = LINES.indexOf("Panels, least margin first: state change to the panel showing it");

        assertTrue(advice > 1 && panels > advice, advice + " " + panels);
    }

    @Test
    void whatIsWrongStandsBetweenTheVerdictAndTheAdviceWithItsCaution() {
        int wrong = LINES.indexOf("What is wrong");

        assertTrue(wrong > 0 && wrong < LINES.indexOf("What to do"));
        assertTrue(LINES.get(wrong + 1).startsWith("  1. Node <12> has its two wires exchanged. (certain)"));
        assertTrue(LINES.subList(wrong, LINES.indexOf("What to do")).stream()
                .anyMatch(line -> line.contains("disconnect the supplies")));
    }

    @Test
    void everythingOfOurOwnIsAscii() {
        assertTrue(LINES.stream().allMatch(line -> line.chars().allMatch(letter -> letter >= ' ' && letter < 127)));
    }

    @Test
    void proseIsNoWiderThan96Columns() {
        int advice = LINES.indexOf("What to do");
        int panels = LINES.indexOf("Panels, least margin first: state change to the panel showing it");

        assertTrue(LINES.subList(0, panels).stream().allMatch(line -> line.length() <= 96), () -> "after " + advice);
    }
}
