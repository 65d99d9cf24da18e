package dropline.harness.report;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Verdicts as the XML in which build servers take test results, as the schema of Surefire's reports has it. Its times
 * are all 0: how long a run took to compute says nothing of a pit.
 */
public final class JUnitXml {
    private JUnitXml() {}

    /**
     * One verdict.
     *
     * @param group what it is of
     * @param failure what is wrong; null where nothing is
     * @param skipped why it was not decided; null where it was
     */
    public record Case(
            String group,
            String name,
            @Nullable String failure,
            @Nullable String skipped) {}

    /** The document of one suite. */
    public static String of(String suite, List<Case> cases) {
        StringBuilder xml = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        xml.append(String.format(
                Locale.ROOT,
                "<testsuite name=\"%s\" tests=\"%d\" failures=\"%d\" errors=\"0\" skipped=\"%d\">\n",
                escaped(suite),
                cases.size(),
                cases.stream().filter(one -> one.failure() != null).count(),
                cases.stream().filter(one -> one.skipped() != null).count()));
        for (Case one : cases) {
            xml.append("  <testcase classname=\"").append(escaped(one.group()));
            xml.append("\" name=\"").append(escaped(one.name())).append("\" time=\"0\">");
            if (one.failure() != null) {
                xml.append("<failure message=\"").append(escaped(one.failure())).append("\"/>");
            } else if (one.skipped() != null) {
                xml.append("<skipped message=\"").append(escaped(one.skipped())).append("\"/>");
            }
            xml.append("</testcase>\n");
        }
        return xml.append("</testsuite>\n").toString();
    }

    /** Control characters, which XML has no way to write, become spaces. */
    private static String escaped(String text) {
        return text.replaceAll("[\\p{Cntrl}\\uFFFE\\uFFFF]", " ")
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
