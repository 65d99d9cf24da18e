package dropline.harness.recording;

import java.io.IOException;

/** One form of recording being written, from rows and moves already checked, in order and with no gaps. */
interface RowSink {
    /** A value for every column; NaN where nothing is known yet. The array is the caller's and changes afterwards. */
    void row(long atNanos, double[] values) throws IOException;

    void move(long atNanos, int control, int value) throws IOException;

    /** Writes what is still held back and the end. */
    void finish() throws IOException;
}
