package dropline.scenarios.see;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.capture.Resolution;
import dropline.harness.capture.SentFrame;
import dropline.harness.capture.Stretch;
import dropline.scenarios.peer.Peer;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** sigrok-cli's UART and Modbus decoders on our waveforms. */
final class WaveformReadersTest {
    private static final Peer SIGROK = new Peer("sigrok-cli");
    private static final long MS = 1_000_000L;

    @TempDir
    private Path folder;

    @BeforeEach
    void sigrokIsHere() {
        SIGROK.mustBeHere();
    }

    @ParameterizedTest
    @CsvSource({
        "9600 baud, 8N1, HUNDRED_NANOSECONDS, 9600, none, 250",
        "9600 baud, 8N1, MICROSECOND, 9600, none, 250",
        "115200 baud, 8E1, HUNDRED_NANOSECONDS, 115200, even, 60",
        "115200 baud, 8E1, MICROSECOND, 115200, even, 60",
        "500 kbaud, 8N1, HUNDRED_NANOSECONDS, 500000, none, 30",
        "500 kbaud, 8N1, NANOSECOND, 500000, none, 12"
    })
    void everyByteOnThePairIsReadBack(
            String baud, String format, Resolution resolution, int rate, String parity, long millis)
            throws IOException, InterruptedException {
        Stretch stretch = new Stretch(30 * MS, (30 + millis) * MS);
        Written written = Written.of(folder, baud, format, "dropline", resolution, stretch);

        List<String> read = SIGROK.says(
                folder, input(written, "uart:rx=pair:baudrate=" + rate + ":parity=" + parity, "uart=rx-data"));

        assertTrue(
                written.frames().size() >= 5, () -> "frames=" + written.frames().size());
        assertEquals(written.bytes(), bytes(read));
    }

    @Test
    void eachDirectionHasItsWire() throws IOException, InterruptedException {
        Written written = small("500 kbaud", "8N1", "dropline", 20);
        String decoder = "uart:rx=from_nodes:tx=from_controller:baudrate=500000";

        List<String> nodes = SIGROK.says(folder, input(written, decoder, "uart=rx-data"));
        List<String> controller = SIGROK.says(folder, input(written, decoder, "uart=tx-data"));

        assertEquals(written.bytes(false), bytes(nodes));
        assertEquals(written.bytes(true), bytes(controller));
    }

    @Test
    void parityAndStopBitsAreRight() throws IOException, InterruptedException {
        Written written = small("115200 baud", "8E1", "dropline", 60);
        String decoder = "uart:rx=pair:baudrate=115200:parity=even";

        List<String> good = SIGROK.says(folder, input(written, decoder, "uart=rx-parity-ok"));
        List<String> bad = SIGROK.says(folder, input(written, decoder, "uart=rx-parity-err:rx-warnings"));

        // The decoder tells of each stop bit beside the parity bit.
        assertEquals(
                written.bytes().size(),
                good.stream().filter("uart-1: Parity bit"::equals).count());
        assertEquals(List.of(), bad);
    }

    @Test
    void atAnotherBaudRateOtherBytesAreRead() throws IOException, InterruptedException {
        Written written = small("9600 baud", "8N1", "dropline", 250);

        List<String> read = SIGROK.says(folder, input(written, "uart:rx=pair:baudrate=19200", "uart=rx-data"));

        assertNotEquals(written.bytes(), bytes(read));
    }

    @Test
    void modbusFramesAreUnderstoodAndTheirChecksumsCorrect() throws IOException, InterruptedException {
        Written written = small("19200 baud", "8E1", "modbus-rtu", 300);
        String decoders = "uart:rx=from_nodes:tx=from_controller:baudrate=19200:parity=even,modbus";

        List<String> checks = SIGROK.says(folder, input(written, decoders, "modbus=cs-crc:sc-crc"));
        List<String> polled = SIGROK.says(folder, input(written, decoders, "modbus=cs-server-id"));
        List<String> errors =
                SIGROK.says(folder, input(written, decoders, "modbus=cs-error:sc-error:error-indication"));

        List<String> addresses = new ArrayList<>();
        written.frames().stream()
                .filter(frame -> frame.talker() < 0)
                .forEach(frame ->
                        addresses.add("modbus-1: Slave ID: " + frame.bytes().at(0)));
        assertTrue(addresses.size() > 6, () -> "polls=" + addresses);
        assertEquals(written.frames().size(), checks.size());
        assertTrue(checks.stream().allMatch("modbus-1: CRC correct"::equals), checks::toString);
        assertEquals(addresses, polled);
        assertEquals(List.of(), errors);
        assertTrue(written.frames().stream().allMatch(frame -> frame.fate() == SentFrame.Fate.ANSWERED));
    }

    private Written small(String baud, String format, String protocol, long millis) throws IOException {
        Stretch stretch = new Stretch(0, millis * MS);
        return Written.of(folder, baud, format, protocol, Resolution.HUNDRED_NANOSECONDS, stretch);
    }

    private static String[] input(Written written, String decoders, String annotations) {
        return new String[] {"-I", "vcd", "-i", written.vcd().toString(), "-P", decoders, "-A", annotations};
    }

    /** Lines are {@code uart-1: 4F}. */
    private static List<String> bytes(List<String> lines) {
        return lines.stream()
                .map(line -> line.substring(line.indexOf(": ") + 2))
                .toList();
    }
}
