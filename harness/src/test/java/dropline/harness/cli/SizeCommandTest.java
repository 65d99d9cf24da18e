package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SizeCommandTest {
    @TempDir
    private Path folder;

    @Test
    void saysTheNumberFirstAndWritesThePage() throws IOException {
        Path pit = SmallPit.write(folder, "150 ms");
        Path page = folder.resolve("size.html");

        Captured run = Captured.run(
                "size",
                pit.toString(),
                SmallPit.recording(folder).toString(),
                "--seeds",
                "2",
                "--baud",
                "115200",
                "--html",
                page.toString());

        assertEquals(ExitCode.PASS, run.exitCode(), run.err());
        assertTrue(run.out().matches("(?s)\\d+ further panels fit on segment bus.*"), run.out());
        assertTrue(Files.readString(page).contains("Panels against latency"));
    }

    @Test
    void aPanelThatMissesAsItStandsFails() throws IOException {
        Path pit = SmallPit.write(folder, "20 us");

        Captured run = Captured.run(
                "size", pit.toString(), SmallPit.recording(folder).toString(), "--seeds", "1", "--baud", "500000");

        assertEquals(ExitCode.FAIL, run.exitCode(), run.err());
        assertTrue(run.out().contains("not fit as it stands"), run.out());
    }

    @Test
    void withoutRecordingAndLoadThereIsNothingToPlay() throws IOException {
        Path pit = SmallPit.write(folder, "150 ms");
        Files.writeString(pit, Files.readString(pit).replace("load:\n  every: 25 ms\n  changes: 1\n", ""));

        wrong("a recording is missing", pit.toString());
    }

    @Test
    void wrongOptionsAreNamedWithWhatWouldDo() throws IOException {
        String pit = SmallPit.write(folder, "150 ms").toString();

        wrong("--margin must be 0% or more and below 100%, not 120%", pit, "--margin", "120%");
        wrong("'much' is no percentage", pit, "--margin", "much");
        wrong("there is no segment 'buss'; did you mean bus?", pit, "--segment", "buss");
        wrong("there is no panel and no kind of indicator 'panel 11'; did you mean panel 1?", pit, "--add", "panel 11");
        wrong("--baud must be 300 to 4000000, not 100", pit, "--baud", "100");
        wrong("is no whole number of bits a second", pit, "--baud", "fast");
        wrong("--seeds must be 1 to 1000, not 0", pit, "--seeds", "0");
    }

    @Test
    void aKindOfIndicatorMayBeAdded() throws IOException {
        Captured run = Captured.run(
                "size",
                SmallPit.write(folder, "150 ms").toString(),
                SmallPit.recording(folder).toString(),
                "--add",
                "LED lamp",
                "--seeds",
                "1",
                "--baud",
                "500000");

        assertEquals(ExitCode.PASS, run.exitCode(), run.err());
        assertTrue(run.out().contains("copies of LED lamp added"), run.out());
    }

    private static void wrong(String message, String... arguments) {
        String[] all = new String[arguments.length + 1];
        all[0] = "size";
        System.arraycopy(arguments, 0, all, 1, arguments.length);

        Captured run = Captured.run(all);

        assertEquals(ExitCode.WRONG_INPUT, run.exitCode(), run.out());
        assertTrue(run.err().contains(message), run.err());
        assertTrue(!run.err().contains("\tat "), run.err());
    }
}
