/**
 * A builder's own protocol as a YAML file. Start from {@link dropline.harness.layout.LayoutFile}, which reads one, and
 * {@link dropline.harness.layout.LayoutText}, which shows what its frames look like. What the fields mean on the wire
 * is known to {@code dropline.protocol.custom} alone.
 */
@NullMarked
package dropline.harness.layout;

import org.jspecify.annotations.NullMarked;
