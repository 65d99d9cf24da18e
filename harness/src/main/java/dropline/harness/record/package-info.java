/**
 * Catching a live state stream: from a socket, through a queue with a limit, into a recording that survives a crash.
 * Start from {@link dropline.harness.record.Recorder}. Takes no message apart itself and prints nothing; whatever is
 * lost on the way is counted.
 */
@NullMarked
package dropline.harness.record;

import org.jspecify.annotations.NullMarked;
