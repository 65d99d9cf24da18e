/**
 * What the host is given to send: recorded changes in columns, a block at a time. Start from
 * {@link dropline.bus.host.StateBlock}.
 */
@NullMarked
package dropline.bus.host;

import org.jspecify.annotations.NullMarked;
