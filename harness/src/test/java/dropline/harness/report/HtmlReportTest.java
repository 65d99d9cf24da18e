package dropline.harness.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.verdict.ReplayResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

final class HtmlReportTest {
    private static final String HOSTILE = "<script>alert('x')</script> \" onload=\"x";

    @Test
    void aPanelNamedScriptStaysText() {
        String html = HtmlReport.of(InventedResult.withPanel(HOSTILE));

        assertFalse(html.contains("<script"));
        assertFalse(Pattern.compile("<[a-z]+(\\s+[a-z-]+=\"[^\"]*\")*\\s+onload")
                .matcher(html)
                .find());
        assertTrue(html.contains("&lt;script>") || html.contains("&lt;script&gt;"));
    }

    @Test
    void nothingIsFetchedFromAnywhere() {
        String html = HtmlReport.of(InventedResult.plain());

        assertFalse(Pattern.compile("(?i)(src|href)\\s*=|url\\(|@import|https?://")
                .matcher(html)
                .find());
    }

    @Test
    void everyPanelControlAndSegmentIsNamed() {
        ReplayResult result = InventedResult.plain();

        String html = HtmlReport.of(result);

        result.panels().forEach(panel -> assertTrue(html.contains(panel.panel()), panel::panel));
        result.controls().forEach(control -> assertTrue(html.contains(control.control()), control::control));
        result.segments().forEach(segment -> assertTrue(html.contains(segment.segment()), segment::segment));
    }

    @Test
    void verdictComesBeforeAdviceAndThatBeforePanels() {
        String html = HtmlReport.of(InventedResult.plain());

        int verdict = html.indexOf("class=\"headline\"");
        int advice = html.indexOf("What to do");
        int panels = html.indexOf("Panels, least margin first");
        assertTrue(verdict > 0 && verdict < advice && advice < panels, verdict + " " + advice + " " + panels);
    }

    @Test
    void aMissedLimitIsSaidInWords() {
        String html = HtmlReport.of(InventedResult.plain());

        assertEquals(2, html.split("&#10007; misses</span>", -1).length - 1 - 1); // 2 panels and 1 single failure
    }

    @Test
    void sameResultGivesTheSameBytes() {
        assertEquals(HtmlReport.of(InventedResult.plain()), HtmlReport.of(InventedResult.plain()));
    }
}
