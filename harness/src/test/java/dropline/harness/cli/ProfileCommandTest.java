package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code dropline profile} from the command line. */
final class ProfileCommandTest {
    private static final String LINE = "time display 1500 50 980000 loop ";

    @TempDir
    private Path folder;

    private String printed(String text) throws IOException {
        return Files.writeString(folder.resolve("printed.txt"), text).toString();
    }

    private static String summed() {
        return LINE + String.format("%02X", LINE.chars().sum() & 0xFF);
    }

    @Test
    void whatABoardPrintedBecomesAProfile() throws IOException {
        Captured run = Captured.run("profile", printed("up\r\n" + summed() + "\r\n" + LINE + "zz\n"), "--name", "oil");

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(run.out().contains("  oil:\n    like: 8-bit loop\n    tasks:\n      display:\n"), run::out);
        assertTrue(run.out().contains("        every: 20.000 ms, measured "), run::out);
        assertTrue(run.out().contains("        takes: 1.500 ms, measured "), run::out);
        assertTrue(run.err().contains("1 line of 2 came spoilt and was left out"), run::err);
    }

    @Test
    void itIsWrittenToAFileWhereOneIsNamed() throws IOException {
        Path out = folder.resolve("oil.yaml");
        Captured run = Captured.run("profile", printed(summed()), "--out", out.toString());

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(Files.readString(out).contains("      display:\n"));
    }

    @Test
    void withoutALineOfItsNothingIsWritten() throws IOException {
        Path out = folder.resolve("none.yaml");
        Captured run = Captured.run("profile", printed("speed 12\n"), "--out", out.toString());

        assertEquals(1, run.exitCode());
        assertTrue(run.err().contains("nothing was timed"), run::err);
        assertTrue(Files.notExists(out));
    }

    @Test
    void oneSourceIsNamed() throws IOException {
        assertEquals(2, Captured.run("profile").exitCode());
        assertEquals(
                2, Captured.run("profile", printed(summed()), "--port", "COM5").exitCode());
    }

    @Test
    void aProgramThatStopsIsSaidToHaveStopped() {
        Captured run = Captured.run(
                "profile",
                "--firmware",
                "../scenarios/firmware/images/timed.hex",
                "--chip",
                "atmega32u4",
                "--for",
                "100ms");

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("the program stopped, and nothing is written"), run::err);
    }
}
