/**
 * A node's board: its receive buffers, what blocks its program, when it answers. Start from
 * {@link dropline.bus.node.NodeBehaviour}. Knows nothing of other nodes, nor of what the controller waits for.
 */
@NullMarked
package dropline.bus.node;

import org.jspecify.annotations.NullMarked;
