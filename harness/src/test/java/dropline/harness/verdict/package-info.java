/** Holds the verdicts to traces fed by hand and to closed forms. */
@NullMarked
package dropline.harness.verdict;

import org.jspecify.annotations.NullMarked;
