/**
 * How a ruling of copper or of supply is told: start from {@link dropline.harness.ruling.RulingText}. Knows no rule;
 * the rooms that own them give the words for what to do.
 */
@NullMarked
package dropline.harness.ruling;

import org.jspecify.annotations.NullMarked;
