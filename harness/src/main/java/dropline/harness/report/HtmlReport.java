package dropline.harness.report;

import dropline.harness.verdict.ReplayResult;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;

/** A result as one HTML file that needs no network and no script. The same result gives the same bytes. */
public final class HtmlReport {
    private HtmlReport() {}

    /** The whole file. */
    public static String of(ReplayResult result) {
        StringOutput html = new StringOutput(1 << 17);
        TemplateEngine.createPrecompiled(ContentType.Html).render("report.jte", Page.of(result), html);
        return html.toString();
    }
}
