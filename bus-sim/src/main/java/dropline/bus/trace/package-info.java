/**
 * The only witness of a run: what happened, in order, as integers. Start from {@link dropline.bus.trace.TraceSink}.
 * Latencies, loads and pictures are folds over it; nothing here interprets.
 */
@NullMarked
package dropline.bus.trace;

import org.jspecify.annotations.NullMarked;
