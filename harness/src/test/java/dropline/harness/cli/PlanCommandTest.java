package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class PlanCommandTest {
    @TempDir
    private Path folder;

    private Path twoSegments() throws IOException {
        Path pit = SmallPit.write(folder, "150 ms");
        String text = Files.readString(pit);
        int from = text.indexOf("  bus:\n");
        String bus = text.substring(from, text.indexOf("nodes:"));
        return Files.writeString(
                pit,
                text.replace(bus, bus + bus.replace("  bus:", "  # the second pair\n  second:"))
                        .replace("node 2: {segment: bus", "node 2: {segment: second"));
    }

    private static String digest(String text) {
        Matcher digest = Pattern.compile("digest\\s+([0-9a-f]{16})").matcher(text);
        assertTrue(digest.find(), text);
        return digest.group(1);
    }

    @Test
    void aReplayOfTheWrittenPlanIsThePlansOwnRun() throws IOException {
        Path pit = twoSegments();
        Path recording = SmallPit.recording(folder);
        Path written = folder.resolve("planned.yaml");

        Captured plan = Captured.run(
                "size", pit.toString(), recording.toString(), "--plan", "--seeds", "2", "--write", written.toString());

        assertEquals(0, plan.exitCode(), plan.err() + plan.out());
        assertTrue(plan.out().startsWith("2 panels on 2 boards fit on 1 segment; now there are 2.\n"), plan.out());
        Captured replay = Captured.run("replay", written.toString(), recording.toString());
        assertEquals(digest(plan.out()), digest(replay.out()));
        assertFalse(Files.readString(written).contains("second"));
        assertTrue(Files.readString(pit).contains("the second pair"));
    }

    @Test
    void aFileThatIsThereIsNotWrittenOver() throws IOException {
        Path pit = twoSegments();

        Captured plan = Captured.run("size", pit.toString(), "--plan", "--write", pit.toString());

        assertEquals(2, plan.exitCode());
        assertTrue(plan.err().contains("is there already"), plan.err());
    }

    @Test
    void optionsOfAPlanNeedOne() throws IOException {
        Path pit = twoSegments();

        assertEquals(2, Captured.run("size", pit.toString(), "--same-segments").exitCode());
        assertEquals(
                2,
                Captured.run("size", pit.toString(), "--plan", "--segment", "bus")
                        .exitCode());
    }

    @Test
    void aPlanIsWrittenAsOneDocumentAndAsAPage() throws IOException {
        Path pit = twoSegments();
        Path page = folder.resolve("plan.html");

        Captured plan = Captured.run(
                "size",
                pit.toString(),
                SmallPit.recording(folder).toString(),
                "--plan",
                "--seeds",
                "1",
                "--json",
                "-",
                "--html",
                page.toString());

        assertEquals(0, plan.exitCode(), plan.err());
        assertTrue(plan.raw().startsWith("{\"version\":1,"), plan.raw());
        assertTrue(plan.raw().contains("\"dropped\":[\"second\"]"), plan.raw());
        assertTrue(Files.readString(page).contains("<h2>What to buy</h2>"));
    }
}
