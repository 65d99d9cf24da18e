/**
 * What stood on the pair, in forms that waveform viewers and packet analysers read. Start from
 * {@link dropline.harness.capture.SegmentCapture}, which gathers it during a run, and
 * {@link dropline.harness.capture.Captures}, which hands it on. Decides nothing about the bus.
 */
@NullMarked
package dropline.harness.capture;

import org.jspecify.annotations.NullMarked;
