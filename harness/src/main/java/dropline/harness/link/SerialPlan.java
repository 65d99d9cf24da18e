package dropline.harness.link;

import dropline.protocol.CharacterFormat;

/**
 * How a serial port is to be opened.
 *
 * @param port {@code COM7}, {@code /dev/ttyUSB0}
 * @param baud bits a second
 * @param dtr whether DTR is raised: many boards restart when it is, and some only talk while it is
 */
public record SerialPlan(String port, int baud, CharacterFormat format, boolean dtr) {}
