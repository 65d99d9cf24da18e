/**
 * A builder's spreadsheet of panels: from rows as saved by a spreadsheet program to what they say, row by row, and to
 * everything in it that could not be understood. Start from {@link dropline.harness.sheet.Sheet}. Knows nothing of pit
 * files.
 */
@NullMarked
package dropline.harness.sheet;

import org.jspecify.annotations.NullMarked;
