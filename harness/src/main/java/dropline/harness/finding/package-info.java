/**
 * What is wrong with a pit, told from its trace alone. Start from {@link dropline.harness.finding.SegmentEvidence},
 * which a run's events are folded into, and {@link dropline.harness.finding.Findings}, the rules. Knows the pit as
 * described; never what faults a run was given.
 */
@NullMarked
package dropline.harness.finding;

import org.jspecify.annotations.NullMarked;
