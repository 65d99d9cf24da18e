/** Faults as people write them, and the catalogue against the kinds and the manual. */
@NullMarked
package dropline.harness.fault;

import org.jspecify.annotations.NullMarked;
