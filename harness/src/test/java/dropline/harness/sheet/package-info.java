/** Spreadsheets of panels as builders save them, and as nobody should. */
@NullMarked
package dropline.harness.sheet;

import org.jspecify.annotations.NullMarked;
