package dropline.harness.learn;

import dropline.protocol.crc.Crc;
import dropline.protocol.crc.CrcCatalogue;
import dropline.protocol.custom.Checksum;
import java.util.ArrayList;
import java.util.List;

/**
 * A check, and where in a frame it stands.
 *
 * @param form how it is written
 * @param from the first byte it covers, counted from the begin of the frame, a start byte included
 * @param after bytes that stand between it and the frame's end
 */
record CheckPlace(Checksum sum, Form form, int from, int after) {
    private static final int LATEST_FROM = 3;
    private static final int MOST_AFTER = 1;

    /** How a check is written. */
    enum Form {
        BIG,
        LITTLE,
        /** Upper-case hexadecimal digits. */
        HEX
    }

    /** Bytes that the check takes. */
    int width() {
        return sum.bits() / 8 * (form == Form.HEX ? 2 : 1);
    }

    /** Whether it is right in the frame from {@code begin} to {@code end}. */
    boolean holds(byte[] bytes, int begin, int end) {
        int at = end - after - width();
        if (at <= begin + from) {
            return false;
        }
        long wanted = sum.of(bytes, begin + from, at);
        int count = width();
        for (int i = 0; i < count; i++) {
            if ((bytes[at + i] & 0xFF) != written(wanted, i, count)) {
                return false;
            }
        }
        return true;
    }

    private int written(long wanted, int index, int count) {
        return switch (form) {
            case BIG -> (int) (wanted >>> 8 * (count - 1 - index)) & 0xFF;
            case LITTLE -> (int) (wanted >>> 8 * index) & 0xFF;
            case HEX -> "0123456789ABCDEF".charAt((int) (wanted >>> 4 * (count - 1 - index)) & 0xF);
        };
    }

    /** Every check there may be, in text as digits too; the wide ones first: a narrow one is often right by chance. */
    static List<CheckPlace> all(boolean text) {
        List<Checksum> sums = new ArrayList<>();
        for (int bits : new int[] {32, 16, 8}) {
            CrcCatalogue.all().stream()
                    .filter(crc -> crc.width() == bits)
                    .forEach(crc -> sums.add(new Checksum.Cyclic(new Crc(crc))));
            if (bits < 32) {
                for (Checksum.Complement complement : Checksum.Complement.values()) {
                    sums.add(new Checksum.Sum(bits, complement));
                }
            }
        }
        sums.add(new Checksum.ExclusiveOr());
        List<CheckPlace> all = new ArrayList<>();
        for (Checksum sum : sums) {
            for (int from = 0; from <= LATEST_FROM; from++) {
                if (text) {
                    for (int after = 0; after <= MOST_AFTER; after++) {
                        all.add(new CheckPlace(sum, Form.HEX, from, after));
                    }
                }
                all.add(new CheckPlace(sum, Form.BIG, from, 0));
                if (sum.bits() > 8) {
                    all.add(new CheckPlace(sum, Form.LITTLE, from, 0));
                }
            }
        }
        return all;
    }
}
