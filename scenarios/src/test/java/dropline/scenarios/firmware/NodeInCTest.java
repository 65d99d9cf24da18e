package dropline.scenarios.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.protocol.Bytes;
import dropline.protocol.FirmwareVersion;
import dropline.protocol.NodeStatus;
import dropline.protocol.frames.DroplineFrame;
import dropline.protocol.frames.DroplineFrame.Control;
import dropline.protocol.frames.DroplineFrame.Entry;
import dropline.protocol.frames.DroplineFrames;
import dropline.scenarios.peer.Peer;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The node's side in C, on this computer, against the frames as this project's own decoder and encoder have them. */
final class NodeInCTest {
    private static final Path FIRMWARE = Path.of("../protocol/firmware");
    private static final int ADDRESS = 7;

    @TempDir
    private Path folder;

    private Process node;
    private Writer to;
    private BufferedReader from;

    @BeforeEach
    void build() throws IOException, InterruptedException {
        new Peer("cc").mustBeHere();
        Path program = folder.resolve("talk");
        assertTrue(new Peer("cc")
                .runs(
                        folder,
                        "-std=c99",
                        "-Wall",
                        "-Wextra",
                        "-Wconversion",
                        "-Werror",
                        "-pedantic",
                        "-o",
                        program.toString(),
                        FIRMWARE.resolve("test/talk.c").toAbsolutePath().toString(),
                        FIRMWARE.resolve("src/dropline_node.c").toAbsolutePath().toString()));
        node = new ProcessBuilder(program.toString(), Integer.toString(ADDRESS)).start();
        to = node.outputWriter(StandardCharsets.US_ASCII);
        from = new BufferedReader(new InputStreamReader(node.getInputStream(), StandardCharsets.US_ASCII));
    }

    @AfterEach
    void end() {
        node.destroyForcibly();
    }

    private List<String> hears(Bytes bytes) throws IOException {
        to.write(bytes + "\n");
        to.flush();
        List<String> lines = new ArrayList<>();
        for (String line = from.readLine(); !line.equals("."); line = from.readLine()) {
            lines.add(line);
        }
        return lines;
    }

    private static NodeStatus status(int applied, int errors) {
        return new NodeStatus(applied, 5, errors, 0x0102, 77);
    }

    private static String reply(int applied, int errors) {
        List<Control> controls = List.of(new Control(3, 1), new Control(9, 0xFFFE));
        return "reply "
                + DroplineFrames.encode(new DroplineFrame.Reply(ADDRESS, status(applied, errors), false, controls));
    }

    @Test
    void answersAPollWithItsStatusAndControls() throws IOException {
        List<Entry> entries = List.of(new Entry(4, 1, 200), new Entry(300, 2, 0), new Entry(16_000, 4, 0xFEDCBA98L));

        List<String> lines = hears(DroplineFrames.encode(new DroplineFrame.Poll(ADDRESS, 9, entries)));

        assertEquals(
                List.of("apply 4 1 200", "apply 300 2 0", "apply 16000 4 4275878552", reply(0, 0), "errors 0"), lines);
        assertEquals(
                List.of(reply(9, 0), "errors 0"),
                hears(DroplineFrames.encode(new DroplineFrame.Poll(ADDRESS, 9, List.of()))));
    }

    @Test
    void saysWhichFirmwareItIs() throws IOException {
        Bytes identity =
                DroplineFrames.encode(new DroplineFrame.Identity(ADDRESS, status(0, 0), new FirmwareVersion(1, 4)));

        assertEquals(
                List.of("reply " + identity, "errors 0"),
                hears(DroplineFrames.encode(new DroplineFrame.Question(ADDRESS))));
    }

    @Test
    void appliesStateForAllAndCountsItOnlyInOrder() throws IOException {
        assertEquals(
                List.of("apply 1 1 1", "errors 0"),
                hears(DroplineFrames.encode(new DroplineFrame.State(1, List.of(new Entry(1, 1, 1))))));
        hears(DroplineFrames.encode(new DroplineFrame.State(3, List.of(new Entry(1, 1, 0)))));

        assertEquals(
                reply(1, 0),
                hears(DroplineFrames.encode(new DroplineFrame.Poll(ADDRESS, 3, List.of())))
                        .get(0));
    }

    @Test
    void isSilentToEveryOther() throws IOException {
        for (int address = 1; address < 256; address++) {
            int lines = hears(DroplineFrames.encode(new DroplineFrame.Poll(address, 0, List.of())))
                    .size();
            assertEquals(address == ADDRESS ? 2 : 1, lines, "address " + address);
        }
    }

    @Test
    void isSilentToEverySingleBitThatIsWrongAndAnswersTheNext() throws IOException {
        Bytes poll = DroplineFrames.encode(new DroplineFrame.Poll(ADDRESS, 1, List.of(new Entry(4, 2, 513))));
        for (int bit = 0; bit < 8 * (poll.length() - 1); bit++) {
            byte[] bytes = poll.toArray();
            bytes[bit / 8] ^= (byte) (1 << bit % 8);
            List<String> lines = hears(Bytes.copyOf(bytes, 0, bytes.length));
            assertTrue(lines.stream().noneMatch(line -> line.startsWith("reply")), "bit " + bit);
            assertTrue(
                    hears(Bytes.ofHex("00")).size() == 1
                            && hears(poll).stream().anyMatch(line -> line.startsWith("reply")),
                    "after bit " + bit);
        }
    }

    @Test
    void bearsWhateverComes() throws IOException {
        Random random = new Random(20261127);
        Bytes poll = DroplineFrames.encode(new DroplineFrame.Poll(ADDRESS, 1, List.of()));
        for (int i = 0; i < 2_000; i++) {
            int[] noise = new int[1 + random.nextInt(200)];
            for (int k = 0; k < noise.length; k++) {
                noise[k] = random.nextInt(6) == 0 ? 0 : random.nextInt(256);
            }
            assertTrue(hears(Bytes.of(noise)).stream().noneMatch(line -> line.startsWith("reply")));
            hears(Bytes.ofHex("00"));
            assertTrue(hears(poll).stream().anyMatch(line -> line.startsWith("reply")), "trial " + i);
        }
    }
}
