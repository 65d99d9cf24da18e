package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.pitfile.PresetList.Figure;
import dropline.harness.pitfile.PresetList.Preset;
import java.util.List;
import org.junit.jupiter.api.Test;

class PresetListTest {
    private static final List<String> WORDS = List.of("kind", "like", "profile", "profile.like");

    private static String text(String preset, String key) {
        return PresetList.all().stream()
                .filter(p -> p.name().equals(preset))
                .flatMap(p -> p.figures().stream())
                .filter(f -> f.key().equals(key))
                .map(Figure::text)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void everyFigureOfEveryPresetSaysWhereItComesFrom() {
        for (Preset preset : PresetList.all()) {
            for (Figure figure : preset.figures()) {
                assertFalse(
                        figure.from().isEmpty() && !WORDS.contains(figure.key()), preset.name() + ": " + figure.key());
            }
        }
    }

    @Test
    void whatNobodyLookedUpIsWrittenAsAGuess() {
        for (Preset preset : PresetList.all()) {
            for (Figure figure : preset.figures()) {
                boolean number = figure.text().matches("(about )?\\d+(\\.\\d+)?(\\.\\.\\d+)? [A-Za-z].*");
                boolean remembered = figure.from().startsWith("from memory");
                boolean rests = figure.key().equals("edge") || figure.key().equals("terminator");
                assertTrue(
                        !number
                                || !remembered
                                || rests
                                || figure.text().startsWith("about ")
                                || figure.text().startsWith("0 "),
                        preset.name() + ": " + figure.key() + " " + figure.text() + " " + figure.from());
            }
        }
    }

    @Test
    void displayTimesAreThoseOfTheirDataSheets() {
        // SSD1306, 1024 bytes in chunks of 16 with address and control byte, 9 bits each at 400 kHz: 64 x 18 x 9 / 400
        // kHz
        assertEquals(64 * 18 * 9 / 400e3, 25_920e-6, 1e-12);
        assertEquals("25920 us", text("OLED on I2C at 400 kHz", "refresh-takes"));
        assertEquals("103680 us", text("OLED on I2C at 100 kHz", "refresh-takes"));
        // HD44780U table 6: 37 us and 4 us a write, 32 characters and 2 addresses; the published span is 1.26 to 1.39
        // ms
        assertEquals(34 * 41e-6, 1394e-6, 1e-9);
        assertEquals("1400 us", text("2x16 LCD parallel", "refresh-takes"));
    }

    @Test
    void likesAreWrittenOut() {
        assertEquals("1 ms", text("1 ms timer", "latency-timer"));
        assertEquals("62", text("1 ms timer", "packet"));
    }
}
