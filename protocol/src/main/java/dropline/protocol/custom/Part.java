package dropline.protocol.custom;

import dropline.protocol.Bytes;

/**
 * One part of a frame as it goes over the wire, escapes included.
 *
 * @param name of its field, or {@code start} or {@code end}
 */
public record Part(String name, Bytes bytes) {}
