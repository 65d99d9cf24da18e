package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;

/** {@code check} against runs that were accepted. */
final class CheckBaselineTest {
    @TempDir
    private Path folder;

    private Path pit = Path.of("");
    private Path flight = Path.of("");
    private String suite = "";

    @BeforeEach
    void write() throws IOException {
        pit = SmallPit.write(folder, "150 ms");
        flight = SmallPit.recording(folder);
        Path file = folder.resolve("suite.yaml");
        Files.writeString(file, """
                suite: Two lamps
                pit: %s
                runs:
                  flight: {recording: %s}
                """.formatted(pit.getFileName(), flight.getFileName()));
        suite = file.toString();
        Captured accepted = Captured.run("check", suite, "--accept");
        assertEquals(0, accepted.exitCode(), accepted::err);
        assertTrue(accepted.out().contains("Accepted, each run with 20 seeds: wrote "), accepted::out);
    }

    private void replace(Path file, String old, String other) throws IOException {
        String text = Files.readString(file);
        assertTrue(text.contains(old), text);
        Files.writeString(file, text.replace(old, other));
    }

    private Captured check(String... more) {
        String[] args = new String[2 + more.length];
        args[0] = "check";
        args[1] = suite;
        System.arraycopy(more, 0, args, 2, more.length);
        return Captured.run(args);
    }

    @Test
    void nothingIsWorseWhereNothingChanged() {
        Captured run = check();

        assertEquals(0, run.exitCode(), run::out);
        assertTrue(run.out().contains("  - Nothing is worse, better, new or gone."), run::out);
    }

    @Test
    void acceptingTwiceWritesTheSameBytes() throws IOException {
        String first = Files.readString(folder.resolve("suite.accepted.yaml"));
        assertFalse(first.contains(folder.toString()));

        check("--accept");

        assertEquals(first, Files.readString(folder.resolve("suite.accepted.yaml")));
    }

    @Test
    void whatIsBehindItIsFoundAmongWhatChanged() throws IOException {
        replace(pit, SmallPit.GAP, "260 us");
        replace(pit, "pit: ", "pit: renamed ");

        Captured run = check("--why");

        assertEquals(1, run.exitCode());
        assertTrue(run.out().contains("  - WORSE: board node 1, mean reply gap "), run::out);
        assertTrue(run.out().contains("\nChanged in the pit file since then\n  - pit: "), run::out);
        String why = run.out().substring(run.out().indexOf("\nWhy\n"));
        assertTrue(why.contains(": " + SmallPit.GAP + " -> 260 us alone"), why);
        assertFalse(why.contains("renamed"), why);
    }

    @Test
    void anotherRecordingCannotBeCompared() throws IOException {
        replace(flight, "0.00,0,0", "0.00,1,0");

        Captured run = check();

        assertEquals(1, run.exitCode());
        assertTrue(run.out().contains("it cannot be compared;\n    look at it, then accept it anew."), run::out);
    }

    @Test
    void aSpoiltFileOfAcceptedRunsIsToldWithItsLine() throws IOException {
        replace(folder.resolve("suite.accepted.yaml"), "timed-out: 0 +- 0", "timed-out: none");

        Captured run = check();

        assertEquals(2, run.exitCode());
        assertTrue(run.err().matches("(?s).*suite\\.accepted\\.yaml:\\d+:\\d+: timed-out: WRONG_TYPE\n.*"), run::err);
        assertTrue(run.err().contains("accept the suite anew"), run::err);
    }

    @Test
    void buildServersAndProgramsAreToldToo() throws Exception {
        replace(pit, SmallPit.GAP, "260 us");
        Path junit = folder.resolve("junit.xml");
        Path json = folder.resolve("check.json");

        Captured run = check("--junit", junit.toString(), "--json", json.toString(), "--jobs", "2");

        assertEquals(1, run.exitCode());
        Document xml = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(junit.toFile());
        assertEquals("testsuite", xml.getDocumentElement().getTagName());
        assertEquals(
                Integer.parseInt(xml.getDocumentElement().getAttribute("failures")),
                xml.getElementsByTagName("failure").getLength());
        assertTrue(xml.getElementsByTagName("failure").getLength() > 0);
        assertTrue(
                Files.readString(json).contains("\"name\":\"node 1\",\"figure\":\"reply-gap\",\"standing\":\"worse\""));
    }
}
