/**
 * Cyclic redundancy checks by their Rocksoft parameters. Start from {@link dropline.protocol.crc.CrcCatalogue}. Knows
 * no frame.
 */
@NullMarked
package dropline.protocol.crc;

import org.jspecify.annotations.NullMarked;
