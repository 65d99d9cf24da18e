package dropline.protocol.custom;

/**
 * How a whole number stands among bytes: binary or as text. A number that does not fit is cut to its last bits or
 * digits, as most firmware would; {@link #least} and {@link #most} say what fits.
 */
public sealed interface NumberForm permits BinaryForm, FloatForm, DigitsForm {

    /** Characters it takes when written; for a free width, the most it may take. */
    int chars();

    /** Whether it may take fewer characters than {@link #chars} when read. */
    default boolean isFree() {
        return false;
    }

    /** The least number that fits. */
    long least();

    /** The largest number that fits. */
    long most();

    /** Writes {@link #chars} characters at {@code at}. */
    void put(long value, byte[] target, int at);

    /** Reads the number at the cursor, which fails where none stands there. */
    long read(Cursor cursor);

    /** Whether a character of this value can stand at that offset of such a number. */
    boolean canBe(int offset, int value);

    /** Whether a number fits. */
    default boolean holds(long value) {
        return value >= least() && value <= most();
    }

    /** As written in a layout file. */
    @Override
    String toString();
}
