package dropline.protocol.custom;

/**
 * A whole number as bytes, two's complement where it has a sign.
 *
 * @param bytes 1, 2, 3 or 4
 * @param signed whether its top bit means minus
 * @param littleEndian whether the least significant byte comes first
 */
public record BinaryForm(int bytes, boolean signed, boolean littleEndian) implements NumberForm {

    public BinaryForm {
        if (bytes < 1 || bytes > 4) {
            throw new IllegalArgumentException("a binary number must have 1..4 bytes: bytes=" + bytes);
        }
    }

    @Override
    public int chars() {
        return bytes;
    }

    @Override
    public long least() {
        return signed ? -(1L << (8 * bytes - 1)) : 0;
    }

    @Override
    public long most() {
        return (1L << (signed ? 8 * bytes - 1 : 8 * bytes)) - 1;
    }

    @Override
    public void put(long value, byte[] target, int at) {
        for (int i = 0; i < bytes; i++) {
            int place = littleEndian ? i : bytes - 1 - i;
            target[at + place] = (byte) (value >> 8 * i);
        }
    }

    @Override
    public long read(Cursor cursor) {
        long read = 0;
        for (int i = 0; i < bytes; i++) {
            long next = cursor.next();
            read |= next << 8 * (littleEndian ? i : bytes - 1 - i);
        }
        return signed && read > most() ? read - (1L << 8 * bytes) : read;
    }

    @Override
    public boolean canBe(int offset, int value) {
        return true;
    }

    @Override
    public String toString() {
        String order = bytes == 1 ? "" : littleEndian ? " little" : " big";
        return (signed ? "int" : "uint") + 8 * bytes + order;
    }
}
