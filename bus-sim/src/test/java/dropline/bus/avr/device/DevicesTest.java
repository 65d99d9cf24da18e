package dropline.bus.avr.device;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Devices byte by byte: from memory of the sheets of the SSD1306 (Solomon Systech), the HD44780U (Hitachi) and the
 * PCF8574 (NXP), whose commands and addresses these are.
 */
final class DevicesTest {
    private final List<Long> seen = new ArrayList<>();
    private final List<Integer> levels = new ArrayList<>();
    private long cycle;

    private final Oled oled = new Oled(0x3C, (level, at) -> seen.add(at));
    private final CharacterLcd lcd = new CharacterLcd((level, at) -> seen.add(at));

    private void send(int... bytes) {
        oled.begun();
        for (int one : bytes) {
            assertTrue(oled.written(one, ++cycle));
        }
        oled.ended(++cycle);
    }

    @Test
    void anOledShowsAnotherPictureAtTheEndOfTheTransferThatChangedIt() {
        assertTrue(oled.is(0x3C));
        assertFalse(oled.is(0x3D));
        send(0x00, 0xAF);
        assertEquals(List.of(cycle), seen, "turned on");

        send(0x40, 0xFF, 0x01);
        assertEquals(2, seen.size());
        send(0x00, 0xB0, 0x00, 0x10);
        send(0x40, 0xFF, 0x01);
        assertEquals(2, seen.size(), "the same dots in the same place");

        send(0x00, 0xB1, 0x05, 0x11);
        send(0x40, 0x01);
        assertEquals(3, seen.size(), "page 1, column 0x15");
        send(0x80, 0xB1, 0x80, 0x05, 0x80, 0x11, 0x40, 0x01);
        assertEquals(3, seen.size(), "commands one by one, then data: the same place");
    }

    @Test
    void anOledsWindowWrapsInItsColumnsAndPages() {
        send(0x00, 0x20, 0x00, 0x21, 10, 11, 0x22, 2, 3);
        send(0x40, 1, 2, 3, 4);
        assertEquals(1, seen.size());
        send(0x40, 1, 2, 3, 4);
        assertEquals(1, seen.size(), "round again, over the same four places");
        send(0x00, 0x20, 0x02, 0xB3, 0x0A, 0x10);
        send(0x40, 3, 4);
        assertEquals(1, seen.size(), "page 3 has the window's second row");
    }

    @Test
    void commandsWithArgumentsDoNotTakeTheNextForTheirs() {
        send(0x00, 0xA8, 0x3F, 0xD3, 0x00, 0xD5, 0x80, 0xD9, 0xF1, 0xDA, 0x12, 0xDB, 0x40, 0x8D, 0x14, 0xA1, 0xC8);
        assertEquals(0, seen.size(), "none of these is what one sees");
        send(0x00, 0x81, 0xAF);
        assertEquals(1, seen.size(), "a contrast, not turned on");
        send(0x00, 0xAF);
        assertEquals(2, seen.size());
    }

    private void nibbles(boolean isData, int byteOf) {
        lcd.taken(isData, byteOf >> 4, ++cycle);
        lcd.taken(isData, byteOf & 15, ++cycle);
    }

    private void byFour() {
        lcd.taken(false, 3, 1);
        lcd.taken(false, 3, 2);
        lcd.taken(false, 3, 3);
        lcd.taken(false, 2, 4);
        nibbles(false, 0x28);
        nibbles(false, 0x0C);
        nibbles(false, 0x01);
        nibbles(false, 0x06);
        seen.clear();
    }

    @Test
    void aCharacterDisplayShowsACharacterWithItsSecondHalf() {
        byFour();
        nibbles(false, 0x80 | 0x40);
        assertEquals(0, seen.size(), "a place is not seen");
        nibbles(true, '7');
        assertEquals(List.of(cycle), seen);
        nibbles(false, 0x80 | 0x40);
        nibbles(true, '7');
        assertEquals(1, seen.size(), "the same character in the same place");
        nibbles(true, '8');
        assertEquals(2, seen.size(), "the place beside it");
        nibbles(false, 0x80);
        nibbles(true, '7');
        assertEquals(3, seen.size(), "the first line is another place");
        nibbles(false, 0x01);
        assertEquals(4, seen.size(), "cleared");
        nibbles(false, 0x01);
        assertEquals(4, seen.size(), "it was blank");
    }

    @Test
    void behindAnExpanderItTakesWhatItsEnableLineLeaves() {
        LcdExpander expander = new LcdExpander(0x27, lcd);
        for (int upper : new int[] {3, 3, 3, 2}) {
            expander.written(upper << 4 | 0x0C, ++cycle);
            expander.written(upper << 4 | 0x08, ++cycle);
        }
        for (int half : new int[] {0x4, 0x1}) {
            expander.written(half << 4 | 0x0D, ++cycle);
            assertEquals(0, seen.size(), "enable is still high");
            expander.written(half << 4 | 0x09, ++cycle);
        }
        assertEquals(List.of(cycle), seen, "an A");
    }

    @Test
    void anExpandersOutputsAreHighWhenPowerComes() {
        PortExpander expander = new PortExpander(0x20, (level, at) -> levels.add(level));
        expander.written(0xFF, 1);
        expander.written(0xFE, 2);
        expander.written(0xFE, 3);

        assertEquals(List.of(0xFE), levels);
        assertEquals(0xFE, expander.read());
    }
}
