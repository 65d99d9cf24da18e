/**
 * A builder's own protocol, laid out field by field. Start from {@link dropline.protocol.custom.Layout}, which says how
 * frames look, and {@link dropline.protocol.custom.Custom}, which speaks and hears them. Reads no layout file: whoever
 * does hands the records over.
 */
@NullMarked
package dropline.protocol.custom;

import org.jspecify.annotations.NullMarked;
