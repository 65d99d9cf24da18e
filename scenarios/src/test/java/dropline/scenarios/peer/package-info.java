/** Tools of others that check what Dropline writes and says. */
@NullMarked
package dropline.scenarios.peer;

import org.jspecify.annotations.NullMarked;
