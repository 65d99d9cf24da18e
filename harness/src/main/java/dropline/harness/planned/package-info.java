/** How a plan is told: start from {@link dropline.harness.planned.PlanText}. Plans nothing itself. */
@NullMarked
package dropline.harness.planned;

import org.jspecify.annotations.NullMarked;
