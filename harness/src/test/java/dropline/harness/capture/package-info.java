/** Holds waveforms, packets and drawings to what was played by hand. */
@NullMarked
package dropline.harness.capture;

import org.jspecify.annotations.NullMarked;
