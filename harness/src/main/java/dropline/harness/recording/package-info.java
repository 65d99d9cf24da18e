/**
 * Recordings: read as a stream, written, turned from one form into the other, and fed to a run. Start from
 * {@link dropline.harness.recording.PitFeed} and {@link dropline.harness.recording.Convert}. Never holds a whole
 * recording in memory and prints nothing.
 */
@NullMarked
package dropline.harness.recording;

import org.jspecify.annotations.NullMarked;
