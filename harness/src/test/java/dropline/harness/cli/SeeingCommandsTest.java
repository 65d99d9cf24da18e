package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code trace} and {@code diff}. */
final class SeeingCommandsTest {
    @TempDir
    private Path folder;

    private String pit = "";
    private String flight = "";

    @BeforeEach
    void write() throws IOException {
        pit = SmallPit.write(folder, "150 ms").toString();
        flight = SmallPit.recording(folder).toString();
    }

    @Test
    void everyFileAskedForIsWritten() throws IOException {
        Captured run =
                run("trace PIT FLIGHT --from 1s --to 1.01s --vcd OUT.vcd --pcapng OUT.pcapng --timeline OUT.svg");

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(read("OUT.vcd").startsWith("$version Dropline $end\n"));
        assertTrue(read("OUT.svg").endsWith("</svg>\n"));
        assertEquals(0x0A, Files.readAllBytes(folder.resolve("OUT.pcapng"))[0]);
        assertTrue(run.out().startsWith("Wrote "), run::out);
    }

    @Test
    void theSameSeedWritesTheSameFilesAndAnotherSeedOthers() throws IOException {
        run("trace PIT FLIGHT --from 1s --to 1.1s --seed 5 --vcd A.vcd --pcapng A.pcapng --timeline A.svg");
        run("trace PIT FLIGHT --from 1s --to 1.1s --seed 5 --vcd B.vcd --pcapng B.pcapng --timeline B.svg");
        run("trace PIT FLIGHT --from 1s --to 1.1s --seed 6 --vcd C.vcd");

        for (String form : new String[] {".vcd", ".pcapng", ".svg"}) {
            assertEquals(-1, Files.mismatch(folder.resolve("A" + form), folder.resolve("B" + form)));
        }
        assertFalse(Files.mismatch(folder.resolve("A.vcd"), folder.resolve("C.vcd")) < 0);
    }

    /** A stretch shows the bus as a run from the beginning has it: what both stretches hold is the same. */
    @Test
    void aLaterBeginChangesNothingOfWhatIsWritten() throws IOException {
        run("trace PIT FLIGHT --from 1s --to 1.1s --pcapng A.pcapng");
        run("trace PIT FLIGHT --from 1.05s --to 1.1s --pcapng B.pcapng");

        String all = Files.readString(folder.resolve("A.pcapng"), StandardCharsets.ISO_8859_1);
        String late = Files.readString(folder.resolve("B.pcapng"), StandardCharsets.ISO_8859_1);
        int firstPacket = late.indexOf("\u0006\u0000\u0000\u0000");
        assertTrue(late.length() - firstPacket > 2_000, () -> "length=" + late.length());
        assertTrue(all.endsWith(late.substring(firstPacket)));
    }

    @Test
    void aDescribedLoadNeedsNoRecording() throws IOException {
        Captured run = run("trace PIT --for 50ms --timeline OUT.svg");

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(read("OUT.svg").contains("Small pit, segment bus, 500000 baud 8N1"));
    }

    @Test
    void aFaultStrikesInTheTracedRun() throws IOException {
        Captured run = run("trace PIT --for 50ms --pcapng OUT.pcapng --fault dead-node_node-1".replace("_node-1", ""));
        assertEquals(2, run.exitCode());

        Captured dead = Captured.run(
                "trace",
                pit,
                "--for",
                "50ms",
                "--pcapng",
                folder.resolve("OUT.pcapng").toString(),
                "--fault",
                "dead-node 'node 1'");

        assertEquals(0, dead.exitCode(), dead::err);
        String packets = Files.readString(folder.resolve("OUT.pcapng"), StandardCharsets.ISO_8859_1);
        assertTrue(packets.contains("request to node 1, ends at") && packets.contains("timed out"));
        assertFalse(packets.contains("reply of node 1"));
    }

    @Test
    void aDrawingOfTooManyFramesSaysWhereToGoOn() {
        Captured run = run("trace PIT FLIGHT --to 1s --timeline OUT.svg");

        assertEquals(0, run.exitCode());
        assertTrue(run.err().contains("the drawing shows the first 60 of "), run::err);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "trace PIT FLIGHT --to 1s | say what to write",
                "trace PIT FLIGHT --vcd OUT.vcd | --to is missing",
                "trace PIT --vcd OUT.vcd --to 1s | a recording is missing",
                "trace PIT FLIGHT --from 2s --to 1s --vcd OUT.vcd | --to must lie after --from",
                "trace PIT FLIGHT --from 1s --to 1s --vcd OUT.vcd | --to must lie after --from",
                "trace PIT FLIGHT --for 1s --vcd OUT.vcd | leave out",
                "trace PIT --for 1s --to 2s --vcd OUT.vcd | which --for sets",
                "trace PIT FLIGHT --to 1s --segment front --timeline OUT.svg | no segment 'front'; it has: bus",
                "trace PIT FLIGHT --to 1s --vcd no/such/folder.vcd | there is no folder",
                "trace PIT FLIGHT --to 1s --vcd PIT | is also read",
                "trace PIT FLIGHT --to 1s --vcd OUT --pcapng OUT | is named twice",
                "trace PIT FLIGHT --to 1s --vcd OUT.vcd --resolution 2us | must be 1us, 100ns or 1ns, not '2us'",
                "trace PIT FLIGHT --from 10m --to 11m --vcd OUT.vcd | before --from: there is nothing to write",
                "trace PIT nowhere.csv --to 1s --vcd OUT.vcd | there is no recording at nowhere.csv",
                "diff PIT PIT | is no trace: its first line must be '# dropline trace 1'",
                "diff nowhere.trace PIT | there is no trace at nowhere.trace",
                "diff PIT | required"
            })
    void wrongInputEndsWithTwoAndSaysWhatIsWrong(String line, String words) {
        Captured run = run(line);

        assertEquals(2, run.exitCode(), () -> run.out() + run.err());
        assertTrue(run.err().contains(words) || run.err().contains("Missing required"), run::err);
        assertFalse(run.err().contains("\tat "), run::err);
    }

    @Test
    void equalTracesEndWithZeroAndOthersWithOne() {
        run("replay PIT FLIGHT --to 2s --seed 1 --trace A.trace");
        run("replay PIT FLIGHT --to 2s --seed 1 --trace B.trace");
        run("replay PIT FLIGHT --to 2s --seed 2 --trace C.trace");

        Captured same = run("diff A.trace B.trace");
        Captured differ = run("diff A.trace C.trace");

        assertEquals(0, same.exitCode(), same::err);
        assertTrue(same.out().startsWith("The same: "), same::out);
        assertEquals(1, differ.exitCode(), differ::err);
        assertTrue(differ.out().contains("They differ at 0."), differ::out);
        assertTrue(differ.out().contains("They are runs of different seeds: 1 and 2."), differ::out);
    }

    @ParameterizedTest
    @ValueSource(strings = {"trace --help", "diff --help"})
    void helpShowsAnExample(String line) {
        Captured run = run(line);

        assertEquals(0, run.exitCode());
        assertTrue(run.out().contains("Example"), run::out);
        assertTrue(run.out().chars().allMatch(letter -> letter < 128));
    }

    /** Runs a line in which PIT and FLIGHT stand for the files, and names of files without a folder lie in ours. */
    private Captured run(String line) {
        String[] arguments = line.split(" ");
        for (int i = 0; i < arguments.length; i++) {
            if (arguments[i].equals("PIT")) {
                arguments[i] = pit;
            } else if (arguments[i].equals("FLIGHT")) {
                arguments[i] = flight;
            } else if (arguments[i].matches("(OUT|[ABC]\\.).*")) {
                arguments[i] = folder.resolve(arguments[i]).toString();
            }
        }
        return Captured.run(arguments);
    }

    private String read(String name) throws IOException {
        return Files.readString(folder.resolve(name));
    }
}
