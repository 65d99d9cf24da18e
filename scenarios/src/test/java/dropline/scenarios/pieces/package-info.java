/**
 * How long the core's pieces take, each by itself, and what they allocate, measured with JMH. Start from
 * {@link dropline.scenarios.pieces.Pieces}; no test runs them.
 */
@NullMarked
package dropline.scenarios.pieces;

import org.jspecify.annotations.NullMarked;
