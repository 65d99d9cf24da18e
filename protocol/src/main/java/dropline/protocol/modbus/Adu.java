package dropline.protocol.modbus;

import dropline.protocol.Bytes;
import dropline.protocol.crc.Crc;
import dropline.protocol.crc.CrcCatalogue;

/** The application data unit: address, protocol data unit, check with its low byte first. */
final class Adu {
    private static final Crc CHECK = new Crc(CrcCatalogue.CRC_16_MODBUS);

    private Adu() {}

    /** The check of the first {@code length} bytes; 0 where they end in their own check. */
    static int check(byte[] bytes, int length) {
        return (int) CHECK.of(bytes, 0, length);
    }

    static Bytes wrap(int address, Bytes pdu) {
        int checkAt = pdu.length() + 1;
        byte[] frame = new byte[checkAt + 2];
        frame[0] = (byte) address;
        System.arraycopy(pdu.toArray(), 0, frame, 1, pdu.length());
        int check = check(frame, checkAt);
        frame[checkAt] = (byte) check;
        frame[checkAt + 1] = (byte) (check >> 8);
        return Bytes.copyOf(frame, 0, frame.length);
    }
}
