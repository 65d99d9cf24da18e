package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code bench} of a modelled board, amid the traffic of its pit. */
final class BenchCommandTest {
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
    void aGoodBoardPassesAmidThePitsTraffic() throws IOException {
        Path html = folder.resolve("board.html");
        Path passport = folder.resolve("board.yaml");

        Captured run = Captured.run(
                "bench",
                "--pit",
                pit,
                "--node",
                "node 1",
                "--quick",
                "--recording",
                flight,
                "--html",
                html.toString(),
                "--passport",
                passport.toString());

        assertTrue(
                run.out().matches("(?s).*pass +pit-traffic +misses 0 of \\d{4} polls amid 1\\.95 s of .*"), run::out);
        assertTrue(Files.readString(html).contains("How its reply gaps are spread"));
        assertTrue(Files.readString(passport).contains("    boot: "));
    }

    @Test
    void aBoardThatTakesAnothersReplyFailsAmidThePitsTraffic() {
        Captured run = Captured.run(
                "bench",
                "--pit",
                pit,
                "--node",
                "node 1",
                "--quick",
                "--recording",
                flight,
                "--fault",
                "eavesdropper 'node 1' rate 50%");

        assertEquals(1, run.exitCode(), run::err);
        assertTrue(run.out().matches("(?s).*FAIL +pit-traffic +misses [1-9].*"), run::out);
    }

    @Test
    void aRecordingNeedsAPitFile() {
        Captured run = Captured.run(
                "bench",
                "--protocol",
                "dropline",
                "--baud",
                "115200",
                "--address",
                "7",
                "--tcp",
                "127.0.0.1:9",
                "--recording",
                flight);

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("--recording needs --pit: it says who else is there"), run::err);
    }

    @Test
    void aRecordingThatIsNotThereIsToldBeforeTheBoardIsAsked() {
        Captured run = Captured.run("bench", "--pit", pit, "--node", "node 1", "--recording", "gone.csv");

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("gone.csv"), run::err);
    }
}
