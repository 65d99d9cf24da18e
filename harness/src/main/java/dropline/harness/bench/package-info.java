/**
 * Whether one board is fit to wire: everything that can be asked of it over a link, each item with a verdict. Start
 * from {@link dropline.harness.bench.Examination}. Says nothing on its own account and writes no file.
 */
@NullMarked
package dropline.harness.bench;

import org.jspecify.annotations.NullMarked;
