package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class NewCommandTest {
    @TempDir
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    private Path write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    @Test
    void whatIsMadeReplaysAtOnce() {
        Path pit = folder.resolve("pit");

        assertEquals(0, Captured.run("new", pit.toString()).exitCode());

        Captured replayed = Captured.run(
                "replay",
                pit.resolve("pit.yaml").toString(),
                pit.resolve("flight.csv").toString());
        assertEquals(0, replayed.exitCode(), replayed.err());
        assertTrue(replayed.out().startsWith("PASS."), replayed.out());
    }

    @Test
    void folderThatHoldsSomethingIsLeftAsItIs() throws IOException {
        Path mine = write("mine.txt", "mine");

        Captured refused = Captured.run("new", folder.toString());

        assertEquals(2, refused.exitCode());
        assertTrue(refused.err().contains("is not empty, and nothing in it is overwritten"), refused.err());
        assertEquals("mine", Files.readString(mine));
        assertFalse(Files.exists(folder.resolve("pit.yaml")));
    }

    @Test
    void rowsThatAreNotUnderstoodAreToldAndTheOthersWritten() throws IOException {
        Path sheet = write("panels.csv", "panel;address\nClock;999\nOil;1\n");
        Path pit = folder.resolve("pit");

        Captured made = Captured.run("new", pit.toString(), "--panels", sheet.toString());

        assertEquals(2, made.exitCode());
        assertTrue(made.err().contains("panels.csv:2:2: address: BAD_ADDRESS"), made.err());
        assertTrue(made.out().contains("1 panel on 1 node and 1 segment"), made.out());
        assertTrue(Files.readString(pit.resolve("pit.yaml")).contains("#   Clock; 999"));
    }

    @Test
    void sheetWithoutPanelsMakesNothing() throws IOException {
        Path sheet = write("panels.csv", "a;b\n1;2\n");
        Path pit = folder.resolve("pit");

        Captured made = Captured.run("new", pit.toString(), "--panels", sheet.toString());

        assertEquals(2, made.exitCode());
        assertTrue(made.err().contains("NO_HEADINGS"), made.err());
        assertFalse(Files.exists(pit));
    }

    @Test
    void presetsAreListedAndShownWholeByAPartOfTheirName() {
        Captured list = Captured.run("presets");
        Captured one = Captured.run("presets", "oled on spi");
        Captured none = Captured.run("presets", "hobby serfo");

        assertTrue(list.out().contains("hobby servo"), list.out());
        assertTrue(one.out().startsWith("OLED on SPI   (kinds.indicators)\n"), one.out());
        assertEquals(2, none.exitCode());
        assertTrue(none.err().contains("did you mean hobby servo?"), none.err());
    }
}
