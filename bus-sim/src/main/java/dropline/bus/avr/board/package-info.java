/** A chip on a board with a transceiver, at a pair. Start from {@link dropline.bus.avr.board.Board}. */
@NullMarked
package dropline.bus.avr.board;

import org.jspecify.annotations.NullMarked;
