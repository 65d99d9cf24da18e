package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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

    private Captured firmware(String... more) {
        List<String> line = new ArrayList<>(
                List.of("bench", "--protocol", "dropline", "--baud", "250000", "--address", "7", "--quick"));
        line.addAll(List.of(more));
        return Captured.run(line.toArray(new String[0]));
    }

    @Test
    void aProgramIsExaminedInPlaceOfABoard() throws IOException {
        String image = "../scenarios/firmware/images/lamps.elf";
        Path passport = folder.resolve("lamps.yaml");

        Captured run = firmware(
                "--firmware",
                image,
                "--chip",
                "atmega328p",
                "--driver-enable",
                "PD2",
                "--passport",
                passport.toString());

        assertTrue(run.out().startsWith("board passes 24 items; 1 cannot be decided over this link."), run::out);
        assertTrue(run.out().contains("Examined over an emulated atmega328p at 250000 baud."), run::out);
        assertTrue(Files.readString(passport).contains("    reply-gap: 1"));
    }

    @Test
    void aDriverThatIsNeverLetGoIsNamedOnceAndNoPassportIsWritten() {
        String image = "../scenarios/firmware/images/lamps-never-released.hex";
        Path passport = folder.resolve("never.yaml");

        Captured run = firmware(
                "--firmware",
                image,
                "--chip",
                "atmega328p",
                "--driver-enable",
                "PD2",
                "--passport",
                passport.toString());

        assertEquals(1, run.exitCode());
        assertTrue(run.out().matches("(?s).*FAIL +driver-edges .*It looks like: stuck-driver \\(.*"), run::out);
        assertTrue(run.err().contains("No passport is written"), run::err);
        assertTrue(Files.notExists(passport));
    }

    @Test
    void whatDoesNotGoTogetherIsRefused() {
        String image = "../scenarios/firmware/images/lamps.hex";

        assertEquals(2, firmware("--chip", "atmega328p", "--port", "COM7").exitCode());
        assertEquals(2, firmware("--firmware", image).exitCode());
        assertEquals(2, firmware("--firmware", image, "--chip", "atmega328").exitCode());
        assertEquals(
                2,
                firmware("--firmware", image, "--chip", "atmega328p", "--usart", "1")
                        .exitCode());
        assertEquals(
                2,
                firmware("--firmware", image, "--chip", "atmega328p", "--driver-enable", "PX2")
                        .exitCode());
        assertEquals(
                2,
                firmware("--firmware", image, "--chip", "atmega328p", "--clock", "16")
                        .exitCode());
        assertEquals(
                2,
                firmware("--firmware", image, "--chip", "atmega328p", "--fault", "dead-node")
                        .exitCode());
        assertEquals(
                2,
                firmware("--firmware", image, "--chip", "atmega328p", "--port", "COM7")
                        .exitCode());
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
