package dropline.harness.record;

/** Why a recording is over. */
public enum Ending {
    /** It was asked to stop, or its time was over. */
    ASKED,
    /** The stream has ended. */
    STREAM_ENDED,
    /** Its file could not be written any more. */
    NOT_WRITABLE
}
