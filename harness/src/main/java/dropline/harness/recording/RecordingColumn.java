package dropline.harness.recording;

/**
 * One column of a recording.
 *
 * @param name unique in the recording
 * @param decimals to how many decimals a writer rounds its values, 0..15; {@link #AS_IS} to keep every value exactly
 */
public record RecordingColumn(String name, int decimals) {
    /** Values are kept exactly. */
    public static final int AS_IS = -1;

    public RecordingColumn {
        if (name.isBlank()) {
            throw new IllegalArgumentException("a column needs a name: name=" + name);
        }
        if (decimals < AS_IS || decimals > Decimals.MOST) {
            throw new IllegalArgumentException("decimals must be 0..15, or -1 for as they are: decimals=" + decimals);
        }
    }
}
