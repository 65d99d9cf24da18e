package dropline.harness.sized;

import dropline.harness.size.BaudCurve;
import dropline.harness.size.SizeResult;
import dropline.harness.size.Tight;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A sizing laid out as one HTML file that needs no network and no script. The same result gives the same bytes.
 *
 * @param result what it is about
 * @param chart panels against latency
 */
public record SizePage(SizeResult result, LatencyChart chart) {

    /** The whole file. */
    public static String of(SizeResult result) {
        StringOutput html = new StringOutput(1 << 15);
        TemplateEngine.createPrecompiled(ContentType.Html)
                .render("size.jte", new SizePage(result, LatencyChart.of(result)), html);
        return html.toString();
    }

    /** Whether the segment is fit as it stands, as a word that is also a style. */
    public String word() {
        return result.fits() ? "pass" : "fail";
    }

    /** What the figures rest on, a sentence each. */
    public List<String> caveats() {
        return SizeText.caveats(result);
    }

    /** A number of further panels in words. */
    public static String number(int more) {
        return SizeText.number(more);
    }

    /** What one more brings beyond its limit, in words. */
    public static String words(@Nullable Tight tight) {
        return SizeText.words(tight);
    }

    /** Whose UART is off at a rate, in words; empty where nobody's is. */
    public static String misfits(BaudCurve curve) {
        return curve.misfits().isEmpty() ? "" : SizeText.misfits(curve);
    }
}
