package dropline.harness.bench;

import dropline.harness.verdict.Outcome;
import java.util.Locale;

/** An examination as the XML in which build servers take test results: one case an item, undecided ones skipped. */
public final class JUnitXml {
    private JUnitXml() {}

    public static String of(BenchResult result) {
        StringBuilder xml = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        xml.append(String.format(
                Locale.ROOT,
                "<testsuite name=\"%s\" tests=\"%d\" failures=\"%d\" skipped=\"%d\">%n".replace("%n", "\n"),
                escaped("bench " + result.subject()),
                result.items().size(),
                count(result, Outcome.FAIL),
                count(result, Outcome.UNDECIDED)));
        for (Item item : result.items()) {
            xml.append("  <testcase classname=\"")
                    .append(escaped(result.subject()))
                    .append("\" name=\"")
                    .append(escaped(item.name()))
                    .append("\">");
            if (item.outcome() == Outcome.FAIL) {
                xml.append("<failure message=\"").append(escaped(item.says())).append("\"/>");
            } else if (item.outcome() == Outcome.UNDECIDED) {
                xml.append("<skipped message=\"").append(escaped(item.says())).append("\"/>");
            }
            xml.append("</testcase>\n");
        }
        return xml.append("</testsuite>\n").toString();
    }

    private static long count(BenchResult result, Outcome outcome) {
        return result.items().stream().filter(item -> item.outcome() == outcome).count();
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
