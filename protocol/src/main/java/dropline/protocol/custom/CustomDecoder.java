package dropline.protocol.custom;

import dropline.protocol.Decoded;

/**
 * Finds a layout's frames in a stream of bytes, whatever the bytes are. Not safe for use by several threads.
 *
 * <p>What is promised after garbage depends on how frames are bounded:
 *
 * <ul>
 *   <li>by a start byte, escaped inside frames: the next whole frame is found, whatever came before;
 *   <li>by an end byte alone: the frame after the next end byte is found, and all after it;
 *   <li>by gaps: the frame after the next gap is found, and all after it;
 *   <li>by a constant and a length: every beginning is tried, so garbage costs no frame for good unless it looks like
 *       one whose check is right. Until a false beginning has got the bytes it asks for, at most the longest frame's,
 *       what follows it waits; then it is found too. Without a check a false beginning is taken for a frame, and what
 *       it swallowed is lost: nothing is promised.
 * </ul>
 */
public interface CustomDecoder {

    /** Takes the next byte, of which the low eight bits count. */
    Decoded<CustomFrame> onByte(int next);

    /**
     * Takes notice of a silence.
     *
     * @param tenthsOfBit since the end of the last character, 0 or more
     */
    Decoded<CustomFrame> onSilence(int tenthsOfBit);

    /**
     * What else has become known by the last byte: where a false beginning turns out to be none, what it held back may
     * be several frames. Ask until it needs more; who does not hears of them with the next bytes.
     */
    Decoded<CustomFrame> more();
}
