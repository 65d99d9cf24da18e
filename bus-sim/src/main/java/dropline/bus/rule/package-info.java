/**
 * What a rule of copper or of supply is and what it came to, as figures: start from {@link dropline.bus.rule.Ruling}.
 * Knows no rule itself; the rooms that own the formulas do. Words for people are made elsewhere.
 */
@NullMarked
package dropline.bus.rule;

import org.jspecify.annotations.NullMarked;
