package dropline.protocol;

/**
 * Listens to a pair and finds the frames on it, whoever sent them, whatever the bytes are. Not safe for use by several
 * threads.
 */
public interface Listener {

    /** Takes the next byte, of which the low eight bits count. */
    Decoded<Heard> onByte(int next);

    /**
     * Takes notice of a silence, once or several times as it grows.
     *
     * @param tenthsOfBit since the end of the last character, 0 or more
     */
    Decoded<Heard> onSilence(int tenthsOfBit);

    /** What else has become known by the last byte or silence; ask until it needs more. */
    Decoded<Heard> more();
}
