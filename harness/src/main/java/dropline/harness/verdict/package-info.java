/**
 * What a replay came to: the verdicts and the figures they rest on, as data. Text, JSON and HTML are renderings of a
 * {@link dropline.harness.verdict.ReplayResult}. Start there, and with {@link dropline.harness.verdict.Verdicts}, which
 * makes one. Prints nothing.
 */
@NullMarked
package dropline.harness.verdict;

import org.jspecify.annotations.NullMarked;
