/**
 * The files that are flashed into a board: Intel HEX and ELF. Start from
 * {@link dropline.harness.firmware.FirmwareFile}. Runs nothing.
 */
@NullMarked
package dropline.harness.firmware;

import org.jspecify.annotations.NullMarked;
