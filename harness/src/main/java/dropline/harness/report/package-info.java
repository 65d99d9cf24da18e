/**
 * Renderings of a {@link dropline.harness.verdict.ReplayResult} for people: {@link dropline.harness.report.HtmlReport}
 * and {@link dropline.harness.report.TextReport}. Start there. Lays out and words; measures and judges nothing.
 */
@NullMarked
package dropline.harness.report;

import org.jspecify.annotations.NullMarked;
