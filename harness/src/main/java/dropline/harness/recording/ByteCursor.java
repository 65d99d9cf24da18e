package dropline.harness.recording;

/** Reads what {@link ByteSink} puts together; never beyond its end. */
final class ByteCursor {
    private final byte[] bytes;
    private final int end;
    private int at;

    ByteCursor(byte[] bytes, int length) {
        this.bytes = bytes;
        this.end = length;
    }

    int left() {
        return end - at;
    }

    int u8() throws DamageException {
        if (at == end) {
            throw new DamageException("it ends too soon");
        }
        return bytes[at++] & 0xFF;
    }

    long little(int count) throws DamageException {
        long value = 0;
        for (int i = 0; i < count; i++) {
            value |= (long) u8() << (8 * i);
        }
        return value;
    }

    long varint() throws DamageException {
        int first = u8();
        return first < 0x80 ? first : longVarint(first);
    }

    private long longVarint(int first) throws DamageException {
        long value = first & 0x7F;
        for (int shift = 7; shift < 64; shift += 7) {
            int next = u8();
            value |= (long) (next & 0x7F) << shift;
            if (next < 0x80) {
                return value;
            }
        }
        throw new DamageException("a number is longer than 64 bits");
    }

    /** A number known to be within 0 and a limit. */
    int count(String what, int most) throws DamageException {
        long value = varint();
        if (value < 0 || value > most) {
            throw new DamageException(what + " must be 0.." + most + ": " + Long.toUnsignedString(value));
        }
        return (int) value;
    }

    long signed() throws DamageException {
        long value = varint();
        return (value >>> 1) ^ -(value & 1);
    }

    byte[] take(int count) throws DamageException {
        if (count > left()) {
            throw new DamageException("it ends too soon");
        }
        byte[] taken = new byte[count];
        System.arraycopy(bytes, at, taken, 0, count);
        at += count;
        return taken;
    }
}
