/** Holds the findings to simulated runs whose faults are known here and nowhere else. */
@NullMarked
package dropline.harness.finding;

import org.jspecify.annotations.NullMarked;
