package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.fault.FaultKind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** Faults on the command line: a pit of two lamps, a flight of 20 s. */
final class FaultCommandsTest {
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
    void whatWasInjectedIsSaidFirst() {
        Captured run = replay("dead-node 'node 1' at 5s for 3s", "noise-burst bus rate 2/s");

        assertTrue(
                run.out()
                        .startsWith("Injected: dead-node 'node 1' at 5 s for 3 s.\n"
                                + "Injected: noise-burst bus rate 2/s by 2 ms.\n"),
                () -> run.out() + run.err());
    }

    @Test
    void aRunWithAFaultIsJudgedAsUsual() {
        Captured run = replay("dead-node 'node 1' at 5s for 3s");

        assertEquals(1, run.exitCode(), run::err);
        assertTrue(run.out().contains("FAIL. 1 of 2 panels misses its limit."), run::out);
    }

    @Test
    void theDocumentHoldsTheFaults() {
        Captured run = Captured.run("replay", pit, flight, "--fault", "dead-node 'node 1' at 5s for 3s", "--json", "-");

        JsonNode fault = new ObjectMapper().readTree(run.raw()).get("faults").get(0);
        assertEquals("dead-node 'node 1' at 5 s for 3 s", fault.get("fault").asString());
        assertEquals("node 1", fault.get("node").asString());
        assertEquals(8_000_000_000L, fault.get("untilNanos").asLong());
    }

    @Test
    void theReportShowsThem() throws IOException {
        Path html = folder.resolve("r.html");

        Captured run = Captured.run("replay", pit, flight, "--fault", "dead-node 'node 1'", "--html", html.toString());

        assertEquals(1, run.exitCode(), run::err);
        String page = Files.readString(html);
        assertTrue(page.contains("Injected: <b>dead-node 'node 1'</b>."));
        assertTrue(page.indexOf("Injected: ") < page.indexOf("class=\"verdict"));
    }

    @Test
    void allProblemsOfAllFaultsAreToldAndNothingIsRun() {
        Captured run = replay("dead-nod x", "dead-node 'node 9'", "noise-burst bus rate -2/s");

        assertEquals(2, run.exitCode());
        assertEquals("", run.out());
        for (String code : new String[] {"UNKNOWN_FAULT", "UNKNOWN_NAME", "OUT_OF_RANGE", "3 problems"}) {
            assertTrue(run.err().contains(code), run::err);
        }
        assertFalse(run.err().contains("\tat "), run::err);
    }

    @Test
    void aFaultBeyondAKnownEndIsToldBeforeTheRun() {
        Captured load = Captured.run("replay", pit, "--for", "10s", "--fault", "dead-node 'node 1' at 10s");
        String compact = folder.resolve("flight.dlr").toString();
        Captured.run("convert", flight, compact);
        Captured recording = Captured.run("replay", pit, compact, "--fault", "dead-node 'node 1' at 30s");
        Captured stretch = Captured.run(
                "replay", pit, flight, "--from", "5s", "--to", "9s", "--fault", "dead-node 'node 1' at 4s");

        for (Captured run : new Captured[] {load, recording, stretch}) {
            assertEquals(2, run.exitCode(), run::out);
            assertTrue(run.err().contains("at: AFTER_END") && run.err().contains("nothing was run"), run::err);
        }
    }

    @Test
    void aFaultBeyondAnEndThatOnlyTheRunTellsIsToldAfterIt() {
        Captured run = replay("dead-node 'node 1' at 30s", "dead-node 'node 2' at 3s");

        assertEquals(2, run.exitCode());
        assertEquals("", run.out());
        assertTrue(run.err().contains("it never struck"), run::err);
        assertTrue(run.err().contains("1 fault never struck; nothing is shown or written"), run::err);
    }

    @Test
    void aLoadThatWouldOutlastEveryLimitIsRefused() {
        Captured run = Captured.run("replay", pit, "--for", "25h");

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("the time limit of a run"), run::err);
    }

    @Test
    void theCatalogueShowsEveryKind() {
        Captured run = Captured.run("faults");

        assertEquals(0, run.exitCode());
        for (FaultKind kind : FaultKind.values()) {
            assertTrue(("\n" + run.out()).contains("\n" + kind.word() + "\n"), kind.word());
        }
    }

    @ParameterizedTest
    @EnumSource(FaultKind.class)
    void oneKindIsShownAlone(FaultKind kind) {
        Captured run = Captured.run("faults", kind.word());

        assertEquals(0, run.exitCode());
        assertTrue(run.out().startsWith(kind.word() + "\n"), run::out);
        assertFalse(run.out().contains("\n\n"), run::out);
    }

    @Test
    void anUnknownKindSuggestsTheNearest() {
        Captured run = Captured.run("faults", "dead-nod");

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("did you mean dead-node?"), run::err);
    }

    @Test
    void aPitThatSurvivesEndsWithZeroAndSaysWhenAndHowLong() {
        Captured run = Captured.run("survive", pit, flight, "--kinds", "dead-node,silent-host");

        assertEquals(0, run.exitCode(), () -> run.out() + run.err());
        assertTrue(run.out().startsWith("PASS. The pit recovers from every one of 3 single faults."), run::out);
        assertTrue(run.out().contains("at 0:06.000, for 5 s or once"), run::out);
        assertEquals("", run.err());
    }

    @Test
    void aPitThatDoesNotEndsWithOne() throws IOException {
        String needle = Files.readString(Path.of(pit))
                .replace(
                        "lamp: {kind: lamp, shows: lamp 2}",
                        "needle: {kind: gauge stepper, shows: lamp 2, speed: 9 on/off/s}");
        Files.writeString(Path.of(pit), needle);

        Captured run = Captured.run("survive", pit, flight, "--kinds", "needle-slipped");

        assertEquals(1, run.exitCode(), () -> run.out() + run.err());
        assertTrue(run.out().startsWith("FAIL. After 1 of 1 single fault something never recovers"), run::out);
    }

    @Test
    void theMatrixStandsAloneOnStandardOutput() {
        Captured run = Captured.run(
                "survive", pit, flight, "--kinds", "dead-node", "--at", "3s", "--for", "1s", "--json", "-");

        JsonNode json = new ObjectMapper().readTree(run.raw());
        assertEquals("", run.out());
        assertEquals(3_000_000_000L, json.get("atNanos").asLong());
        assertEquals(2, json.get("outcomes").size());
        assertEquals(2, json.get("outcomes").get(0).get("panels").size());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "survive PIT | a recording is missing",
                "survive PIT nowhere.csv | no recording",
                "survive PIT FLIGHT --kinds dead-nod,resett | did you mean dead-node?",
                "survive PIT FLIGHT --at 30s | nothing is left to recover in",
                "survive PIT FLIGHT --for 0s | longer than nothing",
                "survive PIT FLIGHT --from 5s --to 5s | --to must lie after --from",
                "survive PIT FLIGHT --json PIT | also read"
            })
    void wrongInputEndsWithTwoAndSaysWhy(String line, String why) {
        String[] arguments = line.replace("PIT", pit).replace("FLIGHT", flight).split(" ");

        Captured run = Captured.run(arguments);

        assertEquals(2, run.exitCode(), () -> run.out() + run.err());
        assertTrue(run.err().contains(why), run::err);
        assertFalse(run.err().contains("\tat "), run::err);
    }

    private Captured replay(String... faults) {
        String[] arguments = new String[3 + 2 * faults.length];
        arguments[0] = "replay";
        arguments[1] = pit;
        arguments[2] = flight;
        for (int i = 0; i < faults.length; i++) {
            arguments[3 + 2 * i] = "--fault";
            arguments[4 + 2 * i] = faults[i];
        }
        return Captured.run(arguments);
    }
}
