/**
 * A protocol of which only lengths are known. Start from {@link dropline.protocol.sized.Sized}. Makes and reads no
 * bytes.
 */
@NullMarked
package dropline.protocol.sized;

import org.jspecify.annotations.NullMarked;
