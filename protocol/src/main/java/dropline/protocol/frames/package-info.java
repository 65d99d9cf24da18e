/**
 * Dropline's own frames. Start from {@link dropline.protocol.frames.DroplineFrames}, which describes the layout, and
 * {@link dropline.protocol.frames.FrameDecoder}. Needs no silence on the wire and knows no time.
 */
@NullMarked
package dropline.protocol.frames;

import org.jspecify.annotations.NullMarked;
