package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.trace.TraceSink;
import dropline.harness.link.TcpLink;
import dropline.harness.live.StandIn;
import dropline.harness.pitfile.PitFile;
import dropline.harness.recording.Moves;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What a suite can hold its runs and its pit to beyond budgets. */
final class CheckHoldsTest {
    private static final double BOOT_SECONDS = 0.7;

    @TempDir
    private Path folder;

    private Path pit = Path.of("");

    @BeforeEach
    void write() throws IOException {
        pit = SmallPit.write(folder, "150 ms");
        SmallPit.recording(folder);
        String text = Files.readString(pit)
                .replace("replies-from: interrupt", "replies-from: interrupt\n    boot: 700 ms")
                .replace(
                        "lamp: {kind: lamp, shows: lamp 1}",
                        "lamp: {kind: lamp, shows: lamp 1}\n    controls:\n      key: {kind: toggle, number: 1}");
        Files.writeString(pit, text);
    }

    private Captured check(String suite, String... more) throws IOException {
        Path file = Files.writeString(folder.resolve("suite.yaml"), "suite: Small suite\npit: pit.yaml\n" + suite);
        String[] args = new String[2 + more.length];
        args[0] = "check";
        args[1] = file.toString();
        System.arraycopy(more, 0, args, 2, more.length);
        return Captured.run(args);
    }

    private Captured run(String keys) throws IOException {
        return check("runs: {one: {recording: flight.csv, " + keys + "}}\n");
    }

    /** The first time after these words, s. */
    private static double seconds(Captured run, String words) {
        Matcher time =
                Pattern.compile(Pattern.quote(words) + " ([0-9.]+) (us|ms|s),").matcher(run.out());
        assertTrue(time.find(), run::out);
        double unit = time.group(2).equals("s") ? 1 : time.group(2).equals("ms") ? 1e-3 : 1e-6;
        return Double.parseDouble(time.group(1)) * unit;
    }

    @Test
    void controlsAreKnownSoonAfterTheStartAndAfterARestart() throws IOException {
        assertEquals(0, run("holds: {known: 50 ms}").exitCode());
        String restart = "faults: [\"reset 'node 1' at 5s\"], holds: {known: %s}";

        Captured soon = run(restart.formatted("100 ms"));
        Captured late = run(restart.formatted("3 s"));

        assertEquals(1, soon.exitCode(), soon::out);
        double took = seconds(soon, "the controls of node 1 were not known for");
        assertTrue(took >= BOOT_SECONDS && took < 3, soon::out);
        assertEquals(0, late.exitCode(), late::out);
        assertTrue(late.out().contains("controls of 1 board"), late::out);
    }

    @Test
    void aBoardThatNeverAnswersIsNeverKnown() throws IOException {
        Captured run = run("faults: [\"dead-node 'node 1'\"], holds: {known: 100 s}");

        assertEquals(1, run.exitCode(), run::out);
        assertTrue(run.out().contains("the controls of node 1 were not known at the end"), run::out);
    }

    @Test
    void panelsRecoverInTimeOrNot() throws IOException {
        String brownOut = "faults: [\"brown-out bus at 5s\"], holds: {controls: no, recovery: %s}";

        Captured soon = run(brownOut.formatted("1 ms"));
        Captured late = run(brownOut.formatted("5 s"));

        assertEquals(1, soon.exitCode(), soon::out);
        assertTrue(seconds(soon, "panel 1 was right again after") < 5, soon::out);
        assertEquals(0, late.exitCode(), late::out);
        assertTrue(late.out().contains("2 panels"), late::out);
    }

    @Test
    void whileTheHostIsSilentPanelsShowWhatItSaidLast() throws IOException {
        String silent = "silent-host at 5s for 5s";
        Captured still = run("faults: [\"" + silent + "\"], holds: {controls: no, silence: 20 ms}");
        Captured restarts =
                run("faults: [\"" + silent + "\", \"reset 'node 1' at 6s\"], holds: {controls: no, silence: 20 ms}");
        Captured after =
                run("faults: [\"" + silent + "\", \"reset 'node 1' at 11s\"], holds: {controls: no, silence: 20 ms}");

        assertEquals(0, still.exitCode(), still::out);
        assertEquals(1, restarts.exitCode(), restarts::out);
        assertTrue(
                restarts.out().contains("panel 1 showed what the host said last after ")
                        || restarts.out().contains("panel 1 did not show what the host said last"),
                restarts::out);
        assertEquals(0, after.exitCode(), after::out);
    }

    @Test
    void aFaultInTurnStrikesEverythingAndSaysWhoSuffered() throws IOException {
        String each = "in-turn: reset at 5s, holds: {controls: no, recovery: %s}";

        Captured soon = run(each.formatted("1 ms"));
        Captured late = run(each.formatted("5 s"));

        assertEquals(1, soon.exitCode(), soon::out);
        assertTrue(soon.out().contains("2 faults in turn"), soon::out);
        assertTrue(
                Pattern.compile("panel 1 was right again after [^(]*\\(reset 'node 1'\\)", Pattern.DOTALL)
                        .matcher(soon.out())
                        .find(),
                soon::out);
        assertTrue(soon.out().contains("(reset 'node 2')"), soon::out);
        assertEquals(0, late.exitCode(), late::out);
    }

    @Test
    void whatIsTriedInTurnIsNotFollowed() throws IOException {
        String suite = "runs:\n  plain: {recording: flight.csv, holds: {controls: no}}\n"
                + "  each: {recording: flight.csv, in-turn: reset at 5s, holds: {controls: no, recovery: 5 s}}\n";
        Captured accepted = check(suite, "--accept");
        Captured again = check(suite);

        assertEquals(0, accepted.exitCode(), accepted::toString);
        assertEquals(0, again.exitCode(), again::toString);
        assertTrue(!Files.readString(folder.resolve("suite.accepted.yaml")).contains("each:"));
    }

    @Test
    void thePitItselfIsHeldToTheRulesOfCopper() throws IOException {
        String suite = "holds: {copper: yes}\nruns: {one: {recording: flight.csv}}\n";
        Captured unknown = check(suite);
        Files.writeString(
                pit,
                Files.readString(pit)
                        .replace(
                                "format: 8N1",
                                "format: 8N1\n    cable: {wire: 24 AWG, step: 1 m, stub: 5 cm, common: yes}"));
        Captured described = check(suite);

        assertTrue(unknown.out().contains("rules of copper"), unknown::out);
        assertEquals(1, unknown.exitCode(), unknown::out);
        assertTrue(described.out().contains("rules of copper"), described::toString);
    }

    @Test
    void liveStepsAreNotRunUnlessAskedForAndThatIsNoSuccess() throws IOException {
        String suite = "live: {who is there: {roll-call: bus, port: COM77}, new: {bench: changed, port: COM77}}\n";
        Captured unasked = check(suite);
        Captured asked = check(suite, "--live");

        assertEquals(1, unasked.exitCode(), unasked::out);
        assertTrue(unasked.out().startsWith("UNDECIDED. 2 live steps were not run."), unasked::out);
        assertTrue(unasked.out().contains("give --live with it connected"), unasked::out);
        assertEquals(1, asked.exitCode(), asked::out);
        assertTrue(asked.out().contains("there is no port COM77 now"), asked::out);
        assertTrue(asked.out().contains("nothing was accepted yet"), asked::out);
    }

    @Test
    void liveStepsAreNotRepeatedAtEverySave() throws IOException {
        Captured run = check("live: {who is there: {roll-call: bus, port: COM77}}\n", "--live", "--watch");

        assertEquals(2, run.exitCode(), run::toString);
        assertTrue(run.err().contains("not done anew at every save"), run::err);
    }

    @Test
    @Timeout(60)
    void aLiveStepDoesWhatItsCommandDoes() throws Exception {
        InetSocketAddress here = freePort();
        AtomicBoolean stop = new AtomicBoolean();
        PitFile.Understood understood = (PitFile.Understood) PitFile.read(pit);
        try (TcpLink far = TcpLink.at(here)) {
            StandIn boards = new StandIn(understood.pit(), 0, 1, List.of(), Moves.none(), new TraceSink() {}, far);
            Thread playing = new Thread(() -> play(boards, stop), "boards");
            playing.start();
            Captured run = check(
                    "live: {who is there: {roll-call: bus, tcp: \"127.0.0.1:" + here.getPort() + "\"}}\n", "--live");
            stop.set(true);
            playing.join();

            assertEquals(0, run.exitCode(), run::toString);
            assertTrue(run.out().contains("2 of 2 boards of segment bus answer."), run::out);
        }
    }

    private static void play(StandIn boards, AtomicBoolean stop) {
        try {
            boards.play(stop::get);
        } catch (IOException gone) {
            throw new AssertionError(gone);
        }
    }

    private static InetSocketAddress freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return new InetSocketAddress(InetAddress.getLoopbackAddress(), socket.getLocalPort());
        }
    }
}
