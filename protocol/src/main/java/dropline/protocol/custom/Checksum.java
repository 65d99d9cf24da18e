package dropline.protocol.custom;

import dropline.protocol.crc.Crc;
import java.util.Locale;

/** A check over part of a frame. */
public sealed interface Checksum {

    /** The check of the bytes from {@code from}, up to {@code to}. */
    long of(byte[] bytes, int from, int to);

    /** How wide it is: 8, 16 or 32 bits. */
    int bits();

    /** A CRC. */
    record Cyclic(Crc crc) implements Checksum {
        @Override
        public long of(byte[] bytes, int from, int to) {
            return crc.of(bytes, from, to - from);
        }

        @Override
        public int bits() {
            return crc.parameters().width();
        }

        @Override
        public String toString() {
            return crc.parameters().name();
        }
    }

    /** What becomes of a sum before it is sent. */
    enum Complement {
        NONE,
        /** Every bit turned. */
        ONES,
        /** Every bit turned and one added, so that bytes and check add up to nothing. */
        TWOS
    }

    /** The bytes added up, modulo 2^8 or 2^16. */
    record Sum(int bits, Complement complement) implements Checksum {
        public Sum {
            if (bits != 8 && bits != 16) {
                throw new IllegalArgumentException("a sum must have 8 or 16 bits: bits=" + bits);
            }
        }

        @Override
        public long of(byte[] bytes, int from, int to) {
            long sum = 0;
            for (int i = from; i < to; i++) {
                sum += bytes[i] & 0xFF;
            }
            long sent =
                    switch (complement) {
                        case NONE -> sum;
                        case ONES -> ~sum;
                        case TWOS -> -sum;
                    };
            return sent & ((1L << bits) - 1);
        }

        @Override
        public String toString() {
            return "sum" + bits
                    + (complement == Complement.NONE
                            ? ""
                            : ", complement " + complement.name().toLowerCase(Locale.ROOT));
        }
    }

    /** The bytes combined by exclusive-or. */
    record ExclusiveOr() implements Checksum {
        @Override
        public long of(byte[] bytes, int from, int to) {
            int check = 0;
            for (int i = from; i < to; i++) {
                check ^= bytes[i] & 0xFF;
            }
            return check;
        }

        @Override
        public int bits() {
            return 8;
        }

        @Override
        public String toString() {
            return "xor8";
        }
    }
}
