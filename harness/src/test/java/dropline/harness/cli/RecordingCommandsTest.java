package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

final class RecordingCommandsTest {
    @TempDir
    private Path folder;

    private Path pit = Path.of("");
    private Path flight = Path.of("");

    @BeforeEach
    void write() throws IOException {
        pit = SmallPit.write(folder, "150 ms");
        Files.writeString(pit, Files.readString(pit) + "    controls:\n      gear: {kind: toggle, number: 1}\n");
        flight = SmallPit.recording(folder);
    }

    @Test
    void aRecordingIsDescribedByTheSameCommandAsAPit() {
        Captured run = Captured.run("describe", flight.toString());

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(run.out().contains(": 19.95 s, 400 states, 2 columns, 0 controls.\n"), run::out);
        assertTrue(run.out().contains("On average 20 states a second; as a rule one every 50 ms.\n"), run::out);
        assertTrue(run.out().contains("lamp 1  switch"), run::out);
    }

    @ParameterizedTest
    @ValueSource(strings = {"flight", "flight.csv", "flight.dlr", "flight.jsonl", "flight.long.csv.gz"})
    void whatItIsShowsInTheFile(String name) throws IOException {
        Path file = folder.resolve(name);
        if (name.equals("flight")) {
            Files.copy(flight, file);
        } else if (!Files.exists(file)) {
            Captured.run("convert", flight.toString(), file.toString());
        }

        Captured run = Captured.run("describe", file.toString());

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(run.out().contains("400 states, 2 columns"), run::out);
    }

    @Test
    void jsonHoldsTheSameFigures() {
        Captured run = Captured.run("describe", flight.toString(), "--json", "-");

        JsonNode json = new ObjectMapper().readTree(run.raw());
        assertEquals(400, json.get("states").asInt());
        assertEquals(19_950_000_000L, json.get("lastNanos").asLong());
        assertEquals("switch", json.get("columns").get(0).get("looksLike").asString());
        assertEquals("", run.out());
    }

    @Test
    void signalsAreWrittenOnceAndThenBelongToWhoeverEditsThem() throws IOException {
        Path signals = folder.resolve("signals.yaml");

        Captured first = Captured.run("describe", flight.toString(), "--write-signals", signals.toString());
        Captured second = Captured.run("describe", flight.toString(), "--write-signals", signals.toString());

        assertEquals(0, first.exitCode(), first::err);
        assertTrue(Files.readString(signals).contains("\n  lamp 1: {number: 1, range: 0..1}  # switch, from 0 to 1\n"));
        assertEquals(2, second.exitCode());
        assertTrue(second.err().contains("is there already"), second::err);
    }

    @Test
    void aJsonListIsToldToBeALineEach() throws IOException {
        Path list = Files.writeString(folder.resolve("list"), "[{\"time\":1,\"a\":2}]");

        Captured run = Captured.run("describe", list.toString());

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("NOT_A_RECORDING") && run.err().contains("a line of its own"), run::err);
    }

    @Test
    void movesFromASecondFileReplayAsIfTheyStoodInTheFirst() throws IOException {
        String moves = "time_s,control,value\n3.01,gear,1\n9.02,gear,0\n";
        Path second = Files.writeString(folder.resolve("moves.csv"), moves);
        Path both = folder.resolve("both.dlr");

        Captured converted =
                Captured.run("convert", flight.toString(), both.toString(), "--controls", second.toString());
        assertEquals(0, converted.exitCode(), converted::err);
        assertTrue(converted.out().contains("400 rows, 2 control moves"), converted::out);

        String apart =
                digest(Captured.run("replay", pit.toString(), flight.toString(), "--controls", second.toString()));
        assertEquals(digest(Captured.run("replay", pit.toString(), both.toString())), apart);
        assertNotEquals(digest(Captured.run("replay", pit.toString(), flight.toString())), apart);
    }

    @Test
    void movesInAnotherUnitOfTimeAreRefusedBeforeAnythingRuns() throws IOException {
        Path second = Files.writeString(folder.resolve("moves.csv"), "time,control,value\n0,gear,1\n19000,gear,0\n");

        Captured run = Captured.run("replay", pit.toString(), flight.toString(), "--controls", second.toString());

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("moves.csv: time: UNITS_DISAGREE"), run::err);
        assertTrue(run.err().contains("Dropline does not guess"), run::err);
    }

    @Test
    void everyFormReplaysTheSame() {
        String expected = digest(Captured.run("replay", pit.toString(), flight.toString()));
        for (String ending : new String[] {".jsonl", ".long.csv", ".long.csv.gz"}) {
            String file = folder.resolve("there" + ending).toString();
            Captured.run("convert", flight.toString(), file);

            assertEquals(expected, digest(Captured.run("replay", pit.toString(), file)), ending);
        }
    }

    @Test
    void aRecordingThatCaughtNothingFailsAndSaysThatNothingWasWritten() throws IOException {
        int free;
        try (DatagramSocket socket = new DatagramSocket(0, InetAddress.getLoopbackAddress())) {
            free = socket.getLocalPort();
        }
        Path none = folder.resolve("none.dlr");

        Captured run = Captured.run("record", "--udp", "127.0.0.1:" + free, "--for", "50ms", "-o", none.toString());

        assertEquals(1, run.exitCode(), run::err);
        assertTrue(run.out().contains("No state came: 0 datagrams received.\n"), run::out);
        assertTrue(run.err().contains("nothing was written, for no state came; see docs/record.md"), run::err);
        assertFalse(Files.exists(none));
    }

    @Test
    void describeAsksForEitherOfTheTwoItReads() {
        Captured run = Captured.run("describe", folder.resolve("nowhere").toString());

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("there is no pit file or recording at "), run::err);
    }

    private static String digest(Captured run) {
        int at = run.out().indexOf("digest ");
        assertTrue(at > 0, () -> run.out() + run.err());
        return run.out().substring(at, at + 23);
    }
}
