/**
 * The fault catalogue: what can go wrong in a pit, as descriptions that a run is given. Start from
 * {@link dropline.bus.fault.FaultKind}. Knows what strikes where and when ({@link dropline.bus.fault.StrikeTimes},
 * {@link dropline.bus.fault.Chance}), never what follows from it.
 */
@NullMarked
package dropline.bus.fault;

import org.jspecify.annotations.NullMarked;
