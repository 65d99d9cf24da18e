/** How results are laid out and worded, on a result made up for the purpose. */
@NullMarked
package dropline.harness.report;

import org.jspecify.annotations.NullMarked;
