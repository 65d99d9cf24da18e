/**
 * What is said on the wire. Start from {@link dropline.protocol.Protocol}: how a poll, a reply and state are framed,
 * how long each is, and how bytes are read back. Knows no clock, no thread, no I/O and no simulator.
 */
@NullMarked
package dropline.protocol;

import org.jspecify.annotations.NullMarked;
