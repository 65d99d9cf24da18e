package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

final class PowerCommandTest {
    private static final String SUPPLIES = """

        boards:
          light: {draws: 50 mA, converter: linear, works-down-to: 7 V}
        supplies:
          main:
            volts: 12 V
            rating: 5 A
            runs:
              cable: {wire: 18 AWG, length: 3 m}
        """;

    /** The small pit with its boards and lamps on a supply. */
    private static Path supplied(Path folder, String more) throws IOException {
        Path pit = SmallPit.write(folder, "150 ms");
        String text = Files.readString(pit)
                .replace("profile: plain}", "profile: plain, board: light, supply: cable" + more + "}")
                .replace("{kind: lamp,", "{kind: lamp, draws: 15 mA,");
        return Files.writeString(pit, text + SUPPLIES);
    }

    @Test
    void aSupplyThatIsEnoughPassesAndItsFiguresAreTold(@TempDir Path folder) throws IOException {
        Captured run = Captured.run("power", supplied(folder, "").toString());

        assertEquals(0, run.exitCode(), run::err);
        assertTrue(run.out().contains("Every rule holds on every supply.\n"), run::out);
        assertTrue(
                run.out().contains("main (12 V, 5 A): 100 mA idle, 100 mA in flight, 130 mA in a lamp test (2.6% of"),
                run::out);
        assertTrue(run.out().contains("Fuse each supply branch close to its source."), run::out);
        assertTrue(run.out().contains("Of 4 currents, 4 are stated"), run::out);
        assertTrue(run.out().lines().allMatch(line -> line.length() <= 110), run::out);
    }

    @Test
    void aBoardOnUsbAsWellFailsAndIsTold(@TempDir Path folder) throws IOException {
        Captured run = Captured.run("power", supplied(folder, ", usb: yes").toString());

        assertEquals(1, run.exitCode(), run::err);
        assertTrue(
                run.out().contains("FAIL: main, node 1 and 1 more: USB and supply at once: 2, at most 0.\n"), run::out);
    }

    @Test
    void aFlightIsFollowedAndTheDocumentHoldsIt(@TempDir Path folder) throws IOException {
        String pit = supplied(folder, "").toString();
        Path page = folder.resolve("power.html");

        Captured run = Captured.run(
                "power", pit, SmallPit.recording(folder).toString(), "--json", "-", "--html", page.toString());

        assertEquals(0, run.exitCode(), run::err);
        JsonNode document = JsonMapper.shared().readTree(run.raw());
        JsonNode main = document.path("flight").path("points").path(0);
        assertEquals("main", main.path("name").asString());
        // lamp 1 is lit for half of the time, lamp 2 for three of every seven rows or four
        assertEquals(0.1 + 0.015, main.path("meanAmps").asDouble(), 0.0015);
        assertEquals(0.13, main.path("maxAmps").asDouble(), 1e-9);
        assertEquals(2, document.path("boards").size());
        assertTrue(Files.readString(page).contains("<h2>Over the flight</h2>"));
    }

    @Test
    void aPitWithoutSuppliesIsToldWhatToWrite(@TempDir Path folder) throws IOException {
        Captured run = Captured.run("power", SmallPit.write(folder, "150 ms").toString());

        assertEquals(2, run.exitCode());
        assertTrue(run.err().contains("describes no supplies"), run::err);
        assertTrue(run.err().contains("write supplies:"), run::err);
    }

    @Test
    void aGaugeThatThereIsNotIsAProblemOfItsLine(@TempDir Path folder) throws IOException {
        Path pit = supplied(folder, "");
        Files.writeString(pit, Files.readString(pit).replace("18 AWG", "48 AWG"));

        Captured run = Captured.run("power", pit.toString());

        assertEquals(2, run.exitCode());
        assertTrue(
                run.err().contains("wire: OUT_OF_RANGE\n  found:    48 AWG\n  expected: a whole number of AWG"),
                run::err);
    }
}
