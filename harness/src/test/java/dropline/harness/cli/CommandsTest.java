package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

final class CommandsTest {
    private static final Console CONSOLE = Console.unheard();

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
    void aPitThatKeepsItsLimitsEndsWithZero() {
        Captured run = Captured.run("replay", pit, flight);

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(run.out().startsWith("PASS. "), run::out);
        assertEquals("", run.err());
    }

    @Test
    void noLineOfAnyHelpIsBroken() {
        for (CommandLine each : Commands.all(CONSOLE).getSubcommands().values()) {
            Command command = annotation(each);
            List<String> shown =
                    Captured.run(command.name(), "--help").out().lines().toList();
            Stream.of(command.description(), command.footer())
                    .flatMap(Stream::of)
                    .forEach(line -> assertTrue(
                            shown.contains(line.replace("%%", "%")), () -> command.name() + " breaks: " + line));
        }
    }

    private static Command annotation(CommandLine command) {
        return command.getCommandSpec().userObject().getClass().getAnnotation(Command.class);
    }

    @Test
    void aCommandLineHasTheCommandAskedForOrAllOfThem() {
        Map<String, CommandLine> all = Commands.all(CONSOLE).getSubcommands();
        all.forEach((name, command) -> {
            assertEquals(name, annotation(command).name());
            assertEquals(
                    Set.of(name),
                    Commands.of(CONSOLE, name, "--help").getSubcommands().keySet());
        });

        assertEquals(
                all.keySet(), Commands.of(CONSOLE, "--help").getSubcommands().keySet());
        assertEquals(all.keySet(), Commands.of(CONSOLE).getSubcommands().keySet());
        assertEquals(
                all.keySet(), Commands.of(CONSOLE, "repaly").getSubcommands().keySet());
    }

    @Test
    void aPitThatMissesALimitEndsWithOne() throws IOException {
        SmallPit.write(folder, "10 us");

        Captured run = Captured.run("replay", pit, flight);

        assertEquals(1, run.exitCode(), run::err);
        assertTrue(run.out().startsWith("FAIL. "), run::out);
    }

    @Test
    void theSameSeedSaysTheSameAndAnotherSeedHasAnotherDigest() {
        String first = Captured.run("replay", pit, flight, "--seed", "7").out();
        String again = Captured.run("replay", pit, flight, "--seed", "7").out();

        assertEquals(first, again);
        assertTrue(first.contains("seed 7"), first);
        assertNotEquals(
                digest(Captured.run("replay", pit, flight, "--seed", "7")),
                digest(Captured.run("replay", pit, flight, "--seed", "8")));
    }

    @Test
    void jsonOnStandardOutputStandsThereAlone() {
        Captured run = Captured.run("replay", pit, flight, "--json", "-");

        JsonNode json = new ObjectMapper().readTree(run.raw());
        assertEquals("Small pit", json.get("pit").asString());
        assertEquals("", run.out());
    }

    @Test
    void everyFileAskedForIsWritten() throws IOException {
        Path html = folder.resolve("r.html");
        Path json = folder.resolve("r.json");
        Path trace = folder.resolve("r.trace");

        Captured run = Captured.run(
                "replay",
                pit,
                flight,
                "--html",
                html.toString(),
                "--json",
                json.toString(),
                "--trace",
                trace.toString());

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(Files.readString(html).contains("</html>"));
        assertTrue(Files.readString(json).startsWith("{"));
        assertTrue(Files.readString(trace).startsWith("# dropline trace 1\n"));
    }

    @Test
    void eachNodeDeadInTurnIsShownWhenAskedFor() {
        Captured run = Captured.run("replay", pit, flight, "--single-failures");

        assertTrue(run.out().contains("With one node dead"), run::out);
    }

    @Test
    void aDescribedLoadNeedsNoRecording() {
        Captured run = Captured.run("replay", pit, "--for", "5 s");

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(run.out().contains("described load, 5 s"), run::out);
    }

    @Test
    void aStretchOfARecordingIsPlayedAlone() {
        Captured run = Captured.run("replay", pit, flight, "--from", "5s", "--to", "10s");

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(run.out().contains("flight.csv, 4.95 s"), run::out);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "replay",
                "replya x",
                "replay PIT",
                "replay PIT FLIGHT --for 5s",
                "replay PIT --for 0s",
                "replay PIT --for 5",
                "replay PIT FLIGHT --from 5s --to 5s",
                "replay PIT nowhere.csv",
                "replay nowhere.yaml FLIGHT",
                "replay PIT FLIGHT --html no/such/folder/r.html",
                "replay PIT FLIGHT --html PIT",
                "replay PIT FLIGHT --no-such-option",
                "describe nowhere.yaml",
                "describe PIT --json -",
                "describe PIT --write-signals new.yaml",
                "describe FLIGHT --write-signals PIT",
                "describe FLIGHT --write-signals no/such/folder/s.yaml",
                "replay PIT FLIGHT --controls nowhere.csv",
                "replay PIT --for 5s --controls FLIGHT",
                "replay PIT FLIGHT --controls FLIGHT",
                "convert FLIGHT flight.xyz",
                "completion",
                "completion bahs",
                "record",
                "record --udp 127.0.0.1:41500",
                "record --udp 127.0.0.1 --show",
                "record --udp 127.0.0.1:0 --show",
                "record --udp ::1:41500 --show",
                "record --udp no.such.host.invalid:41500 --show",
                "record --udp 192.0.2.1:41500 --show",
                "record --udp 127.0.0.1:41500 --tcp 127.0.0.1:41500 --show",
                "record --udp 127.0.0.1:41500 --forward 127.0.0.1:41500 --show",
                "record --tcp 127.0.0.1:41500 --forward 127.0.0.1:41501 --show",
                "record --udp 127.0.0.1:41500 -o FLIGHT",
                "record --udp 127.0.0.1:41500 -o flight.xyz",
                "record --udp 127.0.0.1:41500 --datagram PIT --show",
                "record --udp 127.0.0.1:41500 --datagram nowhere.yaml --show",
                ""
            })
    void wrongInputEndsWithTwoAndSaysWhyWithoutAStackTrace(String line) {
        String[] arguments = line.isEmpty() ? new String[0] : line.split(" ");
        for (int i = 0; i < arguments.length; i++) {
            arguments[i] = arguments[i].equals("PIT") ? pit : arguments[i].equals("FLIGHT") ? flight : arguments[i];
        }

        Captured run = Captured.run(arguments);

        assertEquals(2, run.exitCode(), () -> run.out() + run.err());
        assertFalse(run.err().isBlank());
        assertFalse(run.err().contains("\tat "), run::err);
    }

    @Test
    void aWrongRecordingIsToldWithItsLine() throws IOException {
        Files.writeString(Path.of(flight), "time [s],lamp 1,lamp 2\n0,0,0\n1,oops,0\n");

        Captured run = Captured.run("replay", pit, flight);

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("flight.csv:3:"), run::err);
    }

    @Test
    void badRowsAreLeftOutAndCountedWhenLenient() throws IOException {
        Files.writeString(Path.of(flight), "time [s],lamp 1,lamp 2\n0,0,0\n1,oops,0\n2,1,1\n");

        Captured run = Captured.run("replay", pit, flight, "--lenient");

        assertTrue(run.err().contains("1 bad row was left out"), run::err);
    }

    @Test
    void thePitFileMaySayInWhatTheRecordingCountsTime() throws IOException {
        Files.writeString(Path.of(flight), "time,lamp 1,lamp 2\n0,0,0\n1500,1,0\n3000,0,1\n");
        Files.writeString(Path.of(pit), Files.readString(Path.of(pit)) + "\nrecording:\n  time: ms\n");

        Captured run = Captured.run("replay", pit, flight);

        assertTrue(
                run.out().contains("flight.csv, 3.00 s") || run.out().contains("flight.csv, 3 s"),
                () -> run.out() + run.err());
    }

    @Test
    void describeNamesEveryNode() {
        Captured run = Captured.run("describe", pit);

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(run.out().contains("node 1") && run.out().contains("node 2"), run::out);
    }

    @Test
    void wiringSheetIsPrintedAndCardsAreWritten() throws IOException {
        Path cards = folder.resolve("cards.html");

        Captured run = Captured.run("describe", pit, "--wiring", "--cards", cards.toString());

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(run.out().startsWith("Wiring sheet: "), run::out);
        assertTrue(run.err().contains("Cards written to " + cards), run::err);
        assertTrue(Files.readString(cards).contains("<article class=\"card\">"), "a card");
    }

    @Test
    void cardsAreNotWrittenOverThePitFile() {
        Captured run = Captured.run("describe", pit, "--cards", pit);

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("is also read"), run::err);
    }

    @Test
    void aConvertedRecordingReplaysTheSame() {
        String compact = folder.resolve("flight.dlr").toString();

        Captured converted = Captured.run("convert", flight, compact);

        assertEquals(0, converted.exitCode(), converted::err);
        String digest = digest(Captured.run("replay", pit, flight));
        assertEquals(digest, digest(Captured.run("replay", pit, compact)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--help",
                "replay --help",
                "describe --help",
                "convert --help",
                "record --help",
                "demo --help",
                "faults --help",
                "survive --help",
                "completion --help"
            })
    void helpShowsAnExample(String line) {
        Captured run = Captured.run(line.split(" "));

        assertEquals(0, run.exitCode());
        assertTrue(run.out().contains("Example"), run::out);
        assertTrue(run.out().chars().allMatch(letter -> letter < 128));
    }

    private static String digest(Captured run) {
        int at = run.out().indexOf("digest ");
        assertTrue(at > 0, () -> run.out() + run.err());
        return run.out().substring(at, at + 23);
    }
}
