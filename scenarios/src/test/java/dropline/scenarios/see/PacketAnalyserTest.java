package dropline.scenarios.see;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.capture.FrameWords;
import dropline.harness.capture.Resolution;
import dropline.harness.capture.SentFrame;
import dropline.harness.capture.Stretch;
import dropline.scenarios.peer.Peer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** tshark on our packets: as they are, and with the payload of the serial link decoded as Modbus RTU. */
final class PacketAnalyserTest {
    private static final Peer TSHARK = new Peer("tshark");
    private static final long MS = 1_000_000L;

    @TempDir
    private Path folder;

    @BeforeEach
    void tsharkIsHere() {
        TSHARK.mustBeHere();
    }

    @Test
    void everyFrameIsReadBackWithItsTimeDirectionAndComment() throws IOException, InterruptedException {
        Written written = written("500 kbaud", "8N1", "dropline", new Stretch(30 * MS, 80 * MS));

        List<String> read =
                fields(written.pcapng(), List.of(), "frame.time_epoch", "rtacser.eventtype", "data", "frame.comment");

        List<String> sent = new ArrayList<>();
        for (SentFrame frame : written.frames()) {
            String bytes = frame.bytes().toString().replace(" ", "").toLowerCase(Locale.ROOT);
            sent.add(FrameWords.seconds(frame.startNanos()) + "\t" + (frame.talker() < 0 ? "0x01" : "0x02") + "\t"
                    + bytes);
        }
        assertTrue(sent.size() > 20, () -> "frames=" + sent.size());
        assertEquals(
                sent,
                read.stream()
                        .map(line -> line.substring(0, line.lastIndexOf('\t')))
                        .toList());
        assertTrue(read.stream().allMatch(line -> line.matches(".*ends at 0\\.\\d{9} s, (answered|sent to all)")));
    }

    @Test
    void modbusIsDecodedAndEveryChecksumIsGood() throws IOException, InterruptedException {
        Written written = written("19200 baud", "8E1", "modbus-rtu", new Stretch(0, 300 * MS));

        List<String> read = fields(
                written.pcapng(), MODBUS, "frame.protocols", "mbrtu.unit_id", "modbus.func_code", "mbrtu.crc16.status");

        List<String> sent = new ArrayList<>();
        for (SentFrame frame : written.frames()) {
            int address = frame.bytes().at(0);
            sent.add("rtacser:mbrtu:modbus\t" + address + "\t" + frame.bytes().at(1) + "\t1");
        }
        assertTrue(sent.size() > 12, () -> "frames=" + sent.size());
        assertEquals(sent, read);
    }

    @Test
    void aDamagedByteIsFoundOut() throws IOException, InterruptedException {
        Written written = written("19200 baud", "8E1", "modbus-rtu", new Stretch(0, 300 * MS));
        byte[] bytes = Files.readAllBytes(written.pcapng());
        byte[] first = written.frames().get(0).bytes().toArray();
        bytes[indexOf(bytes, first) + 2] ^= 1;
        Files.write(written.pcapng(), bytes);

        List<String> read = fields(written.pcapng(), MODBUS, "mbrtu.crc16.status");

        assertNotEquals("1", read.get(0));
        assertEquals("1", read.get(1));
    }

    private static final List<String> MODBUS = List.of("-d", "rtacser.data,mbrtu", "-o", "mbrtu.crc_verification:TRUE");

    private Written written(String baud, String format, String protocol, Stretch stretch) throws IOException {
        return Written.of(folder, baud, format, protocol, Resolution.HUNDRED_NANOSECONDS, stretch);
    }

    private List<String> fields(Path pcapng, List<String> options, String... fields)
            throws IOException, InterruptedException {
        List<String> arguments = new ArrayList<>(List.of("-n", "-r", pcapng.toString(), "-T", "fields"));
        arguments.addAll(options);
        for (String field : fields) {
            arguments.addAll(List.of("-e", field));
        }
        return TSHARK.says(folder, arguments.toArray(String[]::new));
    }

    private static int indexOf(byte[] all, byte[] part) {
        for (int at = 0; at + part.length <= all.length; at++) {
            if (java.util.Arrays.equals(all, at, at + part.length, part, 0, part.length)) {
                return at;
            }
        }
        throw new AssertionError("the frame is not in the file");
    }
}
