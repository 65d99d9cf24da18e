/**
 * What the host says, message by message: recognises the form of a live state stream and takes each datagram or line of
 * it apart into named values. Start from {@link dropline.harness.stream.StreamReader}. Knows no socket, no clock and no
 * recording, and throws nothing at anything that may arrive.
 */
@NullMarked
package dropline.harness.stream;

import org.jspecify.annotations.NullMarked;
