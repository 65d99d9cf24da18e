package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is asked where no command is given, and the commands that answers lead to. */
final class AskingTest {
    @TempDir
    private Path folder;

    private final StringWriter said = new StringWriter();
    private final List<String> ran = new ArrayList<>();
    private List<String> ports = List.of();
    private int endsWith = ExitCode.PASS;

    private int answer(String... lines) throws IOException {
        Console console =
                new Console(new PrintWriter(said), new ByteArrayOutputStream(), new PrintWriter(said), true, false);
        BufferedReader typed = new BufferedReader(new StringReader(String.join("\n", lines) + "\n"));
        return new Asking(
                        console,
                        typed,
                        command -> {
                            ran.add(String.join(" ", command));
                            return endsWith;
                        },
                        () -> ports)
                .run();
    }

    private String file(String name) throws IOException {
        return Files.writeString(folder.resolve(name), "").toString();
    }

    @Test
    void leavingAsksNothingMore() throws IOException {
        assertEquals(ExitCode.PASS, answer("6"));
        assertEquals(List.of(), ran);
    }

    @Test
    void theDemoIsOneAnswerAway() throws IOException {
        answer("1", "leave");

        assertEquals(List.of("demo"), ran);
        assertTrue(said.toString().contains("That is:  dropline demo"), said::toString);
    }

    @Test
    void aPitFileIsDescribedOrANewOneMade() throws IOException {
        String pit = file("my pit.yaml");
        String sheet = file("panels.csv");

        answer("2", '"' + pit + '"', "2", "", "attic", sheet, "2", pit.replace(" ", "\\ "), "2", "", "", "", "6");

        assertEquals(List.of("describe " + pit, "new attic --panels " + sheet, "describe " + pit, "new my-pit"), ran);
        assertTrue(said.toString().contains("dropline describe \"" + pit + '"'), said::toString);
    }

    @Test
    void oneMoreConsoleIsSized() throws IOException {
        String pit = file("pit.yaml");
        String flight = file("flight.csv");

        answer("3", folder.resolve("nowhere.yaml").toString(), "", pit, flight, "front", "3", pit, "", "", "6");

        assertEquals(List.of("size " + pit + " " + flight + " --segment front", "size " + pit), ran);
        assertTrue(said.toString().contains("There is no file "), said::toString);
    }

    @Test
    void aBusIsListenedToOnAPortThatIsThere() throws IOException {
        String pit = file("pit.yaml");
        ports = List.of("COM3", "COM7");

        answer("4", pit, "", "2", "", "4", "", "2", "19200", "COM3", "10s", "6");

        assertEquals(
                List.of(
                        "listen " + pit + " --port COM7 --for 60s",
                        "listen --protocol modbus-rtu --baud 19200 --port COM3 --for 10s"),
                ran);
    }

    @Test
    void aBoardIsTestedWithAPitFileOrWithout() throws IOException {
        String pit = file("pit.yaml");
        ports = List.of("COM7");

        answer("5", pit, "oil-board", "", "5", "", "1", "", "9", "COM8", "6");

        assertEquals(
                List.of(
                        "bench --pit " + pit + " --node oil-board --port COM7",
                        "bench --protocol dropline --baud 115200 --address 9 --port COM8"),
                ran);
        assertTrue(said.toString().contains("Supplies and USB off"), said::toString);
    }

    @Test
    void aWrongAnswerIsAskedAgainAndTheEndOfInputEndsIt() throws IOException {
        endsWith = ExitCode.WRONG_INPUT;

        assertEquals(ExitCode.PASS, answer("seven", "0", "1"));

        assertEquals(List.of("demo"), ran);
        assertTrue(said.toString().contains("Please type a number from 1 to 6."), said::toString);
        assertTrue(said.toString().contains("put that right and choose again"), said::toString);
    }

    @Test
    void everyCommandIsOne() throws IOException {
        String pit = file("pit.yaml");
        ports = List.of("COM7");
        answer("2", "", "", "", "3", pit, "", "x", "4", "", "1", "", "", "", "5", "", "1", "", "", "", "6");

        assertEquals(4, ran.size());
        for (String command : ran) {
            DocumentedCommandsTest.parse(command);
        }
    }
}
