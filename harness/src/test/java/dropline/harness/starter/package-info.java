/** Pits made to start from: whatever the spreadsheet, they are read and they run. */
@NullMarked
package dropline.harness.starter;

import org.jspecify.annotations.NullMarked;
