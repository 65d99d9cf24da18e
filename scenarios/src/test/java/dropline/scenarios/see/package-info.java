/**
 * Whether other people's tools read what {@code dropline trace} writes: a logic analyser's decoders the waveforms, a
 * packet analyser the packets. Knows both tools only by their command lines.
 */
@NullMarked
package dropline.scenarios.see;

import org.jspecify.annotations.NullMarked;
