/**
 * Every single fault of the catalogue in turn on everything it can strike: what becomes of each panel, and how long it
 * takes to recover. Start from {@link dropline.harness.survive.Survive}. Simulates nothing itself.
 */
@NullMarked
package dropline.harness.survive;

import org.jspecify.annotations.NullMarked;
