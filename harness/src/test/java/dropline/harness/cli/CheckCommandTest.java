package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class CheckCommandTest {
    private static final Pattern DIGEST = Pattern.compile("digest ([0-9a-f]{16})");

    @Test
    void theSuiteOfANewFolderHolds(@TempDir Path folder) {
        Path fresh = folder.resolve("my-pit");

        Captured made = Captured.run("new", fresh.toString());
        Captured run = Captured.run("check", fresh.resolve("suite.yaml").toString());

        assertTrue(made.out().contains("Wrote " + fresh.resolve("suite.yaml")), made::out);
        assertTrue(made.out().contains("  dropline check " + fresh.resolve("suite.yaml")), made::out);
        assertEquals(0, run.exitCode(), run::toString);
        assertTrue(run.out().startsWith("PASS. All 4 runs hold.\n"), run::out);
        assertTrue(run.out().contains("  - Rests on "), run::out);
    }

    @Test
    void theSuiteOfASpreadsheetRunsAndSaysWhatBreaks(@TempDir Path folder) throws IOException {
        Path sheet = Files.writeString(
                folder.resolve("panels.csv"),
                "panel;shows;controls\nBob's compass;heading needle;\nRadio;com active digits;2 encoders\n");
        Path fresh = folder.resolve("my-pit");
        Captured.run("new", fresh.toString(), "--panels", sheet.toString());

        Captured run = Captured.run("check", fresh.resolve("suite.yaml").toString());

        assertTrue(run.out().contains(" of 4 runs hold") || run.out().contains("All 4 runs hold"), run::toString);
        assertEquals(run.out().startsWith("PASS") ? 0 : 1, run.exitCode(), run::toString);
    }

    @Test
    void aRunIsTheReplayWithTheSameSeed(@TempDir Path folder) throws IOException {
        Path pit = SmallPit.write(folder, "150 ms");
        Path flight = SmallPit.recording(folder);
        Path suite = suite(folder, "flight: {recording: flight.csv, seeds: 7, from: 2 s, to: 9 s}");

        Captured run = Captured.run("check", suite.toString());
        Captured replay =
                Captured.run("replay", pit.toString(), flight.toString(), "--seed", "7", "--from", "2s", "--to", "9s");

        Matcher digest = DIGEST.matcher(replay.out());
        assertTrue(digest.find(), replay::toString);
        assertTrue(run.out().startsWith("PASS. The one run holds.\n"), run::toString);
        assertTrue(run.out().contains(digest.group(1)), run::out);
    }

    @Test
    void aPanelBeyondItsBudgetBreaksItsRunsAndNoOthers(@TempDir Path folder) throws IOException {
        SmallPit.write(folder, "1 us");
        SmallPit.recording(folder);
        Path suite = suite(folder, """
                tight: {recording: flight.csv, seeds: [1, 2]}
                  load: {for: 3 s, holds: {budgets: no, cycle: 20 ms}}""");

        Captured run = Captured.run("check", suite.toString());

        assertEquals(1, run.exitCode(), run::toString);
        assertTrue(run.out().startsWith("FAIL. 1 of 3 runs holds; tight (seeds 1, 2) does not hold.\n"), run::out);
        assertTrue(
                Pattern.compile("FAIL +tight +1 .*2 things, see below")
                        .matcher(run.out())
                        .find(),
                run::out);
        assertTrue(
                Pattern.compile("What broke in tight \\(seed 1\\)\n  - panel 2 took [0-9.]+ (us|ms), limit 1 us")
                        .matcher(run.out())
                        .find(),
                run::out);
        assertTrue(
                Pattern.compile("pass +load +1 .*polls of 1 segment")
                        .matcher(run.out())
                        .find(),
                run::out);
    }

    @Test
    void aSlowRoundOfPollsBreaksWhatACycleAsksFor(@TempDir Path folder) throws IOException {
        SmallPit.write(folder, "150 ms");
        SmallPit.recording(folder);
        Path suite = suite(folder, "load: {for: 3 s, holds: {cycle: 1 us}}");

        Captured run = Captured.run("check", suite.toString());

        assertEquals(1, run.exitCode(), run::toString);
        assertTrue(run.out().contains("a round of polls on bus took "), run::out);
    }

    @Test
    void aRunInWhichNothingWasCheckedIsNoSuccess(@TempDir Path folder) throws IOException {
        SmallPit.write(folder, "150 ms");
        SmallPit.recording(folder);
        Path suite = suite(folder, "idle: {recording: flight.csv, holds: {budgets: no}}");

        Captured run = Captured.run("check", suite.toString());

        assertEquals(1, run.exitCode(), run::toString);
        assertTrue(
                run.out().startsWith("UNDECIDED. Nothing was checked in idle (seed 1), and that is no success."),
                run::out);
    }

    @Test
    void aFaultThatNeverStrikesIsToldWhereTheSuiteStatesIt(@TempDir Path folder) throws IOException {
        SmallPit.write(folder, "150 ms");
        SmallPit.recording(folder);
        Path suite = suite(folder, "late: {recording: flight.csv, faults: [\"dead-node 'node 1' at 900s\"]}");

        Captured run = Captured.run("check", suite.toString());

        assertEquals(2, run.exitCode(), run::toString);
        assertTrue(run.err().contains("suite.yaml:4:42: faults, at: AFTER_END"), run::err);
        assertEquals("", run.out());
    }

    @Test
    void whatIsNoSuiteIsRefused(@TempDir Path folder) throws IOException {
        Path pit = SmallPit.write(folder, "150 ms");

        assertEquals(
                2,
                Captured.run("check", folder.resolve("nowhere.yaml").toString()).exitCode());
        Captured run = Captured.run("check", pit.toString());

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("segments: OTHER_FILE"), run::err);
    }

    private static Path suite(Path folder, String runs) throws IOException {
        return Files.writeString(
                folder.resolve("suite.yaml"), "suite: Small suite\npit: pit.yaml\nruns:\n  " + runs + "\n");
    }
}
