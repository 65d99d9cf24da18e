package dropline.harness.capture;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/**
 * Writes the blocks of a pcapng file, little-endian: section header, interface descriptions, enhanced packets. A
 * block's length is a multiple of 4 and stands at both of its ends.
 */
final class PcapngBlocks {
    private static final int SECTION_HEADER = 0x0A0D0D0A;
    private static final int BYTE_ORDER = 0x1A2B3C4D;
    private static final int INTERFACE = 1;
    private static final int ENHANCED_PACKET = 6;

    private static final int OPT_COMMENT = 1;
    private static final int SECTION_APPLICATION = 4;
    private static final int IF_NAME = 2;
    private static final int IF_TSRESOL = 9;
    private static final int PACKET_FLAGS = 2;
    private static final int INBOUND = 1;
    private static final int OUTBOUND = 2;

    /** Ten to the power of minus nine: nanoseconds. */
    private static final byte NANOS = 9;

    private static final int MOST_OF_A_PACKET = 65_535;

    private final OutputStream out;

    PcapngBlocks(OutputStream out) {
        this.out = out;
    }

    void section(String application, String comment) throws IOException {
        Block block = new Block();
        block.u32(BYTE_ORDER).u16(1).u16(0).u32(-1).u32(-1);
        block.option(OPT_COMMENT, comment)
                .option(SECTION_APPLICATION, application)
                .noMoreOptions();
        block.writeTo(out, SECTION_HEADER);
    }

    void interfaceOf(int linkType, String name) throws IOException {
        Block block = new Block();
        block.u16(linkType).u16(0).u32(MOST_OF_A_PACKET);
        block.option(IF_NAME, name).option(IF_TSRESOL, new byte[] {NANOS}).noMoreOptions();
        block.writeTo(out, INTERFACE);
    }

    /** @param outbound whether it went from the side that captures to the other */
    void packet(int number, long atNanos, byte[] data, boolean outbound, String comment) throws IOException {
        Block block = new Block();
        block.u32(number).u32((int) (atNanos >>> 32)).u32((int) atNanos);
        block.u32(data.length).u32(data.length).bytes(data);
        Block flags = new Block().u32(outbound ? OUTBOUND : INBOUND);
        block.option(OPT_COMMENT, comment)
                .option(PACKET_FLAGS, flags.bytes.toByteArray())
                .noMoreOptions();
        block.writeTo(out, ENHANCED_PACKET);
    }

    /** A block's body while it grows. */
    private static final class Block {
        private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();

        Block u16(int value) {
            bytes.write(value);
            bytes.write(value >> 8);
            return this;
        }

        Block u32(int value) {
            return u16(value).u16(value >> 16);
        }

        /** Filled up to a multiple of 4. */
        Block bytes(byte[] data) {
            bytes.writeBytes(data);
            bytes.writeBytes(new byte[(4 - data.length % 4) % 4]);
            return this;
        }

        Block option(int code, byte[] value) {
            return u16(code).u16(value.length).bytes(value);
        }

        Block option(int code, String value) {
            return option(code, value.getBytes(StandardCharsets.UTF_8));
        }

        Block noMoreOptions() {
            return u32(0);
        }

        void writeTo(OutputStream out, int type) throws IOException {
            int length = bytes.size() + 12;
            out.write(new Block().u32(type).u32(length).bytes.toByteArray());
            bytes.writeTo(out);
            out.write(new Block().u32(length).bytes.toByteArray());
        }
    }
}
