package dropline.protocol.custom;

/**
 * A number as IEEE 754 binary floating point. What travels here are whole numbers of steps; a fraction received is
 * rounded to the nearest.
 *
 * @param bytes 4 or 8
 * @param littleEndian whether the least significant byte comes first
 */
public record FloatForm(int bytes, boolean littleEndian) implements NumberForm {

    public FloatForm {
        if (bytes != 4 && bytes != 8) {
            throw new IllegalArgumentException("a floating number must have 4 or 8 bytes: bytes=" + bytes);
        }
    }

    @Override
    public int chars() {
        return bytes;
    }

    /** Minus the largest below which every whole number is exact: 2^24 or 2^53. */
    @Override
    public long least() {
        return -most();
    }

    @Override
    public long most() {
        return bytes == 4 ? 1L << 24 : 1L << 53;
    }

    @Override
    public void put(long value, byte[] target, int at) {
        long bits = bytes == 4 ? Float.floatToIntBits((float) value) : Double.doubleToLongBits((double) value);
        for (int i = 0; i < bytes; i++) {
            target[at + (littleEndian ? i : bytes - 1 - i)] = (byte) (bits >> 8 * i);
        }
    }

    @Override
    public long read(Cursor cursor) {
        long bits = 0;
        for (int i = 0; i < bytes; i++) {
            long next = cursor.next();
            bits |= next << 8 * (littleEndian ? i : bytes - 1 - i);
        }
        double read = bytes == 4 ? Float.intBitsToFloat((int) bits) : Double.longBitsToDouble(bits);
        if (!(Math.abs(read) < 0x1p62)) {
            cursor.fail();
            return 0;
        }
        return Math.round(read);
    }

    @Override
    public boolean canBe(int offset, int value) {
        return true;
    }

    @Override
    public String toString() {
        return "float" + 8 * bytes + (littleEndian ? " little" : " big");
    }
}
