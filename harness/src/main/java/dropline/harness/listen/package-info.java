/**
 * Listening to a pair on which others talk: who says what, how soon nodes answer, what goes wrong. Start from
 * {@link dropline.harness.listen.Listening}. Never sends a byte.
 */
@NullMarked
package dropline.harness.listen;

import org.jspecify.annotations.NullMarked;
