/**
 * A replay's result as one JSON document, stable and documented in {@code docs/json.md}. Start from
 * {@link dropline.harness.json.ReplayJson}. Adds no figure of its own.
 */
@NullMarked
package dropline.harness.json;

import org.jspecify.annotations.NullMarked;
