/**
 * Where each board should go: shares a pit's boards out over segments and offers only what passed when it was played.
 * Start from {@link dropline.harness.plan.Planning}. Knows no bus formula, reads no file and prints nothing.
 */
@NullMarked
package dropline.harness.plan;

import org.jspecify.annotations.NullMarked;
