package dropline.harness.report;

import dropline.harness.finding.Cause;
import dropline.harness.finding.Finding;
import java.util.List;

/** What is wrong, as numbered paragraphs under a heading; nothing where nothing is. */
public final class FindingText {
    private FindingText() {}

    public static String of(List<Finding> findings) {
        StringBuilder text = new StringBuilder();
        if (findings.isEmpty()) {
            return "";
        }
        text.append("\nWhat is wrong\n");
        Paragraphs paragraphs = new Paragraphs(text);
        int number = 1;
        for (Finding finding : findings) {
            paragraphs.add(
                    "  " + number++ + ". ",
                    finding.sentence() + " (" + finding.confidence().word() + ") " + finding.next());
        }
        if (findings.stream().anyMatch(Finding::touchesHardware)) {
            paragraphs.add("  ", Cause.CAUTION);
        }
        return text.toString();
    }
}
