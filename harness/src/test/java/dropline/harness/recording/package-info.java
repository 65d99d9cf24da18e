/** Recordings: what goes in comes out, and nothing bad goes unsaid. */
@NullMarked
package dropline.harness.recording;

import org.jspecify.annotations.NullMarked;
