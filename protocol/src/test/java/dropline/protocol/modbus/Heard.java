package dropline.protocol.modbus;

import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Decoded;
import dropline.protocol.Decoded.Reason;
import dropline.protocol.modbus.ModbusDecoder.Role;

/** Feeds whole frames, each after a silence, to a fresh decoder at 19200 baud 8E1. */
final class Heard {
    static final int FRAME_GAP = 385;
    static final int CHARACTER_GAP = 165;

    private Heard() {}

    static ModbusDecoder synchronised(Role role) {
        ModbusDecoder decoder = new ModbusDecoder(role, 19_200, CharacterFormat.EIGHT_E_ONE);
        decoder.onSilence(FRAME_GAP);
        return decoder;
    }

    static Decoded<ModbusFrame> feed(ModbusDecoder decoder, Bytes frame) {
        for (int i = 0; i < frame.length(); i++) {
            decoder.onByte(frame.at(i));
        }
        return decoder.onSilence(FRAME_GAP);
    }

    static Decoded<ModbusFrame> request(Bytes frame) {
        return feed(synchronised(Role.REQUESTS), frame);
    }

    static Decoded<ModbusFrame> response(Bytes frame) {
        return feed(synchronised(Role.RESPONSES), frame);
    }

    static Decoded<ModbusFrame> complete(ModbusFrame frame, Bytes bytes) {
        return new Decoded.Complete<>(frame, bytes.length());
    }

    static Decoded<ModbusFrame> rejected(Reason reason, int bytes) {
        return new Decoded.Rejected<>(reason, bytes);
    }

    /** Puts address and check around a protocol data unit written as hexadecimal pairs. */
    static Bytes framed(int address, String pdu) {
        return Adu.wrap(address, Bytes.ofHex(pdu));
    }
}
