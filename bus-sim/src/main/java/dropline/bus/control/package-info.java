/** What a person moves, as a node sees it: state, never events. Start from {@link dropline.bus.control.Controls}. */
@NullMarked
package dropline.bus.control;

import org.jspecify.annotations.NullMarked;
