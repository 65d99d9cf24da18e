package dropline.scenarios.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.avr.chip.Chip;
import dropline.bus.pit.Indicator.Blocks;
import dropline.bus.pit.Profile;
import dropline.harness.link.Arrival;
import dropline.harness.link.BoardLink;
import dropline.harness.pitfile.PitFile;
import dropline.harness.profile.TimedTasks;
import dropline.protocol.CharacterFormat;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A program that times itself by the library's header, and the profile that comes of what it prints. */
final class TimedTest {
    private static final long SECOND = 1_000_000_000;

    private static TimedTasks heard(long nanos) throws IOException {
        TimedTasks tasks = new TimedTasks();
        var chip = Programs.image(Chip.ATMEGA328P, "timed.hex").on(Chip.ATMEGA328P, Programs.HZ, 0);
        try (BoardLink link = new BoardLink(chip, 0, null, 38_400, CharacterFormat.EIGHT_N_ONE)) {
            while (link.now() < nanos) {
                if (link.await(nanos) instanceof Arrival.Received received) {
                    tasks.take(received.bytes().at(0));
                }
            }
        }
        return tasks;
    }

    @Test
    void theLongestOfEachAndHowOftenItCameAreWhatTheProgramDoes() throws IOException {
        TimedTasks tasks = heard(10 * SECOND);
        List<TimedTasks.Task> all = List.copyOf(tasks.all());

        assertEquals(
                List.of("display", "leds"),
                all.stream().map(TimedTasks.Task::name).toList());
        assertEquals(0, tasks.spoilt());
        assertEquals(Blocks.LOOP, all.get(0).blocks());
        assertEquals(1.5e6, all.get(0).longestNanos(), 20e3);
        assertEquals(20e6, all.get(0).everyNanos(10 * SECOND), 0.2e6);
        assertTrue(all.get(0).count() > 440, () -> "count=" + all.get(0).count());
        assertEquals(Blocks.INTERRUPTS, all.get(1).blocks());
        assertEquals(0.3e6, all.get(1).longestNanos(), 20e3);
        assertEquals(100e6, all.get(1).everyNanos(10 * SECOND), 1e6);
    }

    @Test
    void aPitFileTakesTheProfile(@TempDir Path folder) throws IOException {
        Files.writeString(
                folder.resolve("board.yaml"),
                heard(3 * SECOND).text("board-timed", "8-bit loop", "2026-11-27", 3 * SECOND));
        String pit = """
                include: board.yaml
                hubs:
                  one: {kind: board, adapter: none}
                signals:
                  value: {unit: on/off, range: 0..1, number: 1}
                segments:
                  s:
                    baud: 250000 baud
                    controller: {hub: one}
                nodes:
                  board: {segment: s, address: 7, profile: board-timed}
                panels:
                  panel:
                    node: board
                    indicators:
                      lamp: {kind: lamp, shows: value}
                """;
        PitFile.Result result = PitFile.parse(folder.resolve("pit.yaml").toString(), pit);
        Profile profile = assertInstanceOf(PitFile.Understood.class, result, result::toString)
                .pit()
                .segments()
                .get(0)
                .nodes()
                .get(0)
                .profile();

        assertEquals(
                List.of("display", "leds"),
                profile.tasks().stream().map(Profile.Task::name).toList());
        assertEquals(Blocks.INTERRUPTS, profile.tasks().get(1).blocks());
        assertEquals(1.5e6, profile.tasks().get(0).takesNanos(), 20e3);
    }
}
