package dropline.protocol;

/**
 * What a node says of itself in every reply.
 *
 * @param lastSequence the sequence number of the last state frame applied, 0..255
 * @param bootCount restarts since it was made, modulo 256
 * @param receiveErrors frames or characters received wrong, modulo 256
 * @param longestLoopUnits the longest loop pass since the last poll, in units of 100 us, 0..65535, held at the top
 * @param refreshes display refreshes completed, modulo 256
 */
public record NodeStatus(int lastSequence, int bootCount, int receiveErrors, int longestLoopUnits, int refreshes) {}
