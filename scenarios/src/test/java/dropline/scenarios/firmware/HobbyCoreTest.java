package dropline.scenarios.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import dropline.bus.avr.board.Counterpart;
import dropline.bus.avr.chip.Chip;
import dropline.bus.avr.chip.Pin;
import dropline.bus.clock.UartClock;
import dropline.harness.bench.BenchResult;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.scenarios.peer.Peer;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A program on the hobby core of Debian's arduino-core-avr 1.8.7: its timers, serial port, EEPROM, converter, two
 * wires.
 */
final class HobbyCoreTest {
    private static final Path CORE = Path.of("/usr/share/arduino/hardware/arduino/avr/cores/arduino");
    private static final long MILLI = 1_000_000;

    private static Path built(Path sketch, Chip chip, String variant, Path folder)
            throws IOException, InterruptedException {
        new Peer("avr-g++").mustBeHere();
        if (!Files.exists(CORE)) {
            if ("required".equals(System.getProperty("dropline.peers"))) {
                fail("arduino-core-avr is not installed");
            }
            abort("arduino-core-avr is not installed, so no program on it runs here");
        }
        Path image = folder.resolve("sketch.elf");
        assertTrue(new Peer("bash")
                .runs(
                        folder,
                        Programs.FOLDER
                                .resolve("sketch/build.sh")
                                .toAbsolutePath()
                                .toString(),
                        sketch.toAbsolutePath().toString(),
                        chip.word(),
                        variant,
                        image.toString()));
        return image;
    }

    @Test
    void theLibrarysExampleIsFitToWire(@TempDir Path folder) throws IOException, InterruptedException {
        Path example = Path.of("../protocol/firmware/examples/Lamps/Lamps.ino");
        Path image = built(example, Chip.ATMEGA328P, "standard", folder);

        BenchResult result = Programs.examined(image, Programs.lamps(250_000));

        assertEquals(new TreeSet<>(), Programs.failed(result));
    }

    /** Each of the library's other examples, in a pit with what hangs on its pins. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Display | devices: {d: {kind: OLED, shows: v}}"
                        + " | v: {kind: OLED, shows: value, refresh-every: 100 ms, refresh-takes: 1 ms} | ''",
                "Encoder | 'pins: {knob: PC0 PC1, push: PC2}' | ''"
                        + " | 'knob: {kind: encoder, number: 0}, push: {kind: button, number: 1, bounce: 2 ms}'",
                "Stepper | 'pins: {v: PB0 PB1 PB2 PB3}'"
                        + " | 'v: {kind: gauge stepper, shows: value, speed: 80 percent/s}' | ''",
            })
    void theOtherExamplesDoWhatTheySay(
            String name, String firmware, String indicators, String controls, @TempDir Path folder)
            throws IOException, InterruptedException {
        Path example = Path.of("../protocol/firmware/examples/" + name + "/" + name + ".ino");
        Path image = built(example, Chip.ATMEGA328P, "standard", folder);
        Played played = Played.played(
                Played.onePanel(image.toAbsolutePath().toString(), firmware, indicators, controls),
                4_000 * Played.MILLI,
                10 * Played.MILLI);

        assertEquals(0, played.timedOut);
        assertEquals(played.moved, played.told);
        assertTrue(indicators.isEmpty() || played.shown.size() >= 38, () -> "shown=" + played.shown.size());
        assertTrue(played.longestNanos() < 8 * Played.MILLI, () -> "longest=" + played.longestNanos());
        assertTrue(controls.isEmpty() || played.moved.values().stream().allMatch(moves -> moves > 5));
    }

    @ParameterizedTest
    @CsvSource({"ATMEGA328P, standard, PB5", "ATMEGA2560, mega, PB7"})
    void runs(Chip chip, String variant, String led, @TempDir Path folder) throws IOException, InterruptedException {
        Path image = built(Programs.FOLDER.resolve("sketch/sketch.cpp"), chip, variant, folder);
        StringBuilder said = new StringBuilder();
        List<Long> edges = new ArrayList<>();
        Counterpart board = new Counterpart(
                Programs.image(chip, image).on(chip, Programs.HZ, 0),
                0,
                null,
                1e9 / 115_200,
                CharacterFormat.EIGHT_N_ONE,
                (value, good, end) -> said.append((char) value));
        Pin pin = Pin.named(led).orElseThrow();
        board.board().chip().port(pin.port()).watch((levels, changed, cycle) -> {
            if ((changed >> pin.bit() & 1) != 0) {
                edges.add(UartClock.ticksToNanos(cycle, Programs.HZ));
            }
        });

        board.advanceTo(100 * MILLI);
        board.say(Bytes.copyOf("gear down".getBytes(StandardCharsets.US_ASCII), 0, 9), 100 * MILLI);
        board.advanceTo(2_000 * MILLI);

        assertEquals(
                "stored 42\r\nanalog 0\r\nroot 1.414214\r\ndisplay 2\r\nGEAR DOWN",
                said.toString(),
                "2: nobody acknowledged");
        assertTrue(edges.size() > 10, () -> "edges=" + edges.size());
        for (int i = 2; i + 2 < edges.size(); i += 2) {
            // its clock counts in 4 us, and a delay begins anywhere between
            assertEquals(100.0, (edges.get(i + 1) - edges.get(i)) / 1e6, 0.02);
            assertEquals(250.0, (edges.get(i + 2) - edges.get(i)) / 1e6, 0.3);
        }
    }
}
