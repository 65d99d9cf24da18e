/**
 * Ways to a pair: a serial port, a TCP connection, a simulated segment, an emulated board. Start from
 * {@link dropline.harness.link.Link}. Carries bytes and says when they came; understands none of them and prints
 * nothing.
 */
@NullMarked
package dropline.harness.link;

import org.jspecify.annotations.NullMarked;
