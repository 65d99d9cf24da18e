package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class LayoutCommandTest {
    private static final Path LAYOUTS = layouts();

    @Test
    void everyFrameIsShownWithWhatEachByteIs() {
        Captured run = Captured.run("layout", layout("lines"), "--address", "12", "--values", "345");

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(
                run.out().contains("    1  31 32                    12        address: 12, as digits 2\n"), run::out);
        assertTrue(run.out().contains("state, 18 characters with 1 signal; each adds 10\n"), run::out);
    }

    @Test
    void aValueGoesIntoTheFramesThatHoldItAndTheNearestIntoTheOthers() {
        Captured run = Captured.run("layout", layout("lines"), "--values", "345,-20");

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(run.out().contains("   19  30 30 32 30              0020\n"), run::out);
        assertTrue(run.out().contains("   19  30 30 30 30              0000\n"), run::out);
        assertTrue(
                run.out().contains("(value -20 does not fit in digits 5, which holds 0..99999; 0 goes in its place)\n"),
                run::out);
    }

    @Test
    void aValueThatFitsInNoFrameIsRefused() {
        Captured run = Captured.run("layout", layout("lines"), "--values", "1,-12345");

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("value -12345 does not fit in signed 5, which holds -9999..9999\n"), run::err);
        assertTrue(run.err().contains("value -12345 does not fit in digits 5, which holds 0..99999\n"), run::err);
    }

    @Test
    void pastedBytesAreReadAndWhatIsNoFrameSaysWhy() {
        Captured run = Captured.run("layout", layout("gaps"), "--decode", "87 01 00 C8 00 B0 | 87 01 00 C8 00 B1");

        assertEquals("""
                87 01 00 C8 00 B0
                    request, address 7, in place 1 = 1, in place 2 = 200
                87 01 00 C8 00 B1
                    no frame: the check does not match; is its range right, and its kind?
                """, run.out());
        assertEquals(1, run.exitCode());
    }

    @Test
    void pastedTextIsRead() {
        Captured run = Captured.run("layout", layout("lines"), "--decode-text", "?07*38\\r\\n");

        assertEquals("3F 30 37 2A 33 38 0D 0A\n    request, address 7\n", run.out());
        assertEquals(0, run.exitCode(), run::err);
    }

    @Test
    void whatIsNoHexadecimalIsRefused() {
        Captured run = Captured.run("layout", layout("lines"), "--decode", "3F 3");

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("--decode needs pairs of hexadecimal digits"), run::err);
    }

    @Test
    void aPitWhoseSegmentsSpeakTheExamplesIsReplayed(@TempDir Path folder) throws IOException {
        StringBuilder flight = new StringBuilder("time,heading,airspeed,bilge alarm\n");
        for (int i = 0; i < 100; i++) {
            flight.append(i / 10.0)
                    .append(',')
                    .append(i * 3 % 360)
                    .append(',')
                    .append(i)
                    .append(',');
            flight.append(i / 20 % 2).append('\n');
        }
        Path recording = folder.resolve("flight.csv");
        Files.writeString(recording, flight);

        Captured run = Captured.run("replay", LAYOUTS.resolve("pit.yaml").toString(), recording.toString());

        assertTrue(run.out().contains("pass     compass"), () -> run.out() + run.err());
        assertTrue(run.out().contains("pass     speed"), run::out);
        assertTrue(run.out().contains("pass     alarms"), run::out);
    }

    @Test
    void whatIsWrongWithALayoutIsSaidWhereThePitNamesIt(@TempDir Path folder) throws IOException {
        String pit = Files.readString(LAYOUTS.resolve("pit.yaml"));
        Path file = folder.resolve("pit.yaml");
        Files.writeString(
                file, pit.replace("airspeed: {unit: kt, range: 0..150", "airspeed: {unit: kt, range: 0..15000"));
        for (String name : new String[] {"counted", "gaps", "lines"}) {
            String text = Files.readString(LAYOUTS.resolve(name + ".yaml"));
            Files.writeString(
                    folder.resolve(name + ".yaml"), name.equals("gaps") ? text.replace("sum8", "sum9") : text);
        }

        Captured wrong = Captured.run("describe", file.toString());

        assertEquals(2, wrong.exitCode());
        assertTrue(wrong.err().contains("gaps.yaml:15:"), wrong::err);
        assertTrue(wrong.err().contains("check: UNKNOWN_NAME"), wrong::err);

        Files.copy(LAYOUTS.resolve("gaps.yaml"), folder.resolve("gaps.yaml"), StandardCopyOption.REPLACE_EXISTING);
        Captured tooLarge = Captured.run("describe", file.toString());

        assertTrue(tooLarge.err().contains("airspeed: DOES_NOT_FIT"), tooLarge::err);
        assertTrue(tooLarge.err().contains("signed 5 holds -9999..9999"), tooLarge::err);

        Files.delete(folder.resolve("gaps.yaml"));
        Captured missing = Captured.run("describe", file.toString());

        assertTrue(missing.err().contains("layout: NO_SUCH_FILE"), missing::err);
        assertTrue(missing.err().contains("gaps.yaml, where there is nothing"), missing::err);
    }

    @Test
    void whatIsNoNumberIsCalledThat() {
        Captured values = Captured.run("layout", layout("lines"), "--values", "1,a");
        Captured address = Captured.run("layout", layout("lines"), "--address", "seven");

        assertEquals(2, values.exitCode());
        assertTrue(values.err().contains("'a' is no whole number"), values::err);
        assertEquals(2, address.exitCode());
        assertTrue(address.err().contains("'seven' is no whole number"), address::err);
    }

    private static String layout(String name) {
        return LAYOUTS.resolve(name + ".yaml").toString();
    }

    private static Path layouts() {
        Path here = Path.of("").toAbsolutePath();
        Path root = Files.isDirectory(here.resolve("docs")) ? here : Objects.requireNonNull(here.getParent());
        return root.resolve("scenarios").resolve("layouts");
    }
}
