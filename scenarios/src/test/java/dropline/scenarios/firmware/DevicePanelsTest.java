package dropline.scenarios.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Panels that show by way of a device, of a motor, or that say so; with an encoder, a selector and a lever. */
final class DevicePanelsTest {
    private static final long SECOND = 1_000_000_000;

    private static Played played(String image, String firmware, String pins, String indicator, long nanos) {
        String pinned = "pins: {knob: PC0 PC1, mode: PC2 PC3 PC4, lever: PC5" + pins + "}";
        return Played.played(
                Played.onePanel(
                        "panel-" + image + ".hex",
                        firmware + "\n      " + pinned,
                        "v: {kind: " + indicator + ", shows: value}",
                        "knob: {kind: encoder, number: 0}, mode: {kind: selector, number: 1, positions: 3},"
                                + " lever: {kind: axis, number: 2, dead-band: 4}"),
                nanos,
                10 * Played.MILLI);
    }

    private static String refreshed(String kind) {
        return kind + ", refresh-every: 100 ms, refresh-takes: 1 ms";
    }

    /**
     * How soon a value is seen: its frame of about 0.45 ms waits for a poll of up to 2 ms at most, then what the
     * program needs: 22 bytes to an OLED at 400 kHz take 0.5 ms, an LCD's byte 82 us and by an expander at 100 kHz 1.3
     * ms, of which two come before the first digit is written; 0.5 ms before the register is.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "oled         | devices: {d: {kind: OLED, shows: v}} | OLED | 59 | 0.9 | 4",
                "lcd          | devices: {d: {kind: character LCD, at: PB0 PB1 PB2 PB3 PB4 PB5, shows: v}}"
                        + " | character LCD | 59 | 0.5 | 3",
                "lcd-expander | devices: {d: {kind: character LCD by expander, shows: v}}"
                        + " | character LCD | 59 | 1.5 | 9",
                "digits       | devices: {d: {kind: digit driver, at: PB3 PB5 PB2, shows: v}} | digits | 59 | 0.4 | 3",
                "register     | applied: gpior0 | digits | 60 | 0.89 | 4",
            })
    void aDisplayShowsEachValue(String image, String firmware, String kind, int shown, double least, double most) {
        Played played = played(image, firmware, "", refreshed(kind), 6 * SECOND);

        assertEquals(shown, played.shown.size(), "nought is there already, unless the program says so");
        assertEquals(0, played.timedOut);
        played.shown.forEach(one -> {
            double millis = one.afterNanos() / 1e6;
            assertTrue(millis > least && millis < most, one::toString);
        });
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "expander | devices: {d: {kind: port expander, shows: [v]}} | '' | lamp",
                "stepper  | usart: 0 | , v: PB0 PB1 PB2 PB3 | gauge stepper, speed: 80 percent/s",
            })
    void aLampAndAMotorFollow(String image, String firmware, String pins, String indicator) {
        Played played = played(image, firmware, pins, indicator, 6 * SECOND);

        assertTrue(played.shown.size() >= 58, () -> "shown=" + played.shown.size());
        assertTrue(played.longestNanos() < 6 * Played.MILLI, () -> "longest=" + played.longestNanos());
        assertEquals(0, played.timedOut);
        assertEquals(played.moved, played.told);
    }

    /** Interrupts are off for 8 LEDs, 24 bits each, 20 cycles a bit: 0.24 ms, six characters. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = "leds | devices: {d: {kind: addressable LEDs, at: PB0, shows: v}} | LED bar")
    void ledsWithInterruptsOffCostFrames(String image, String firmware, String kind) {
        Played played = played(image, firmware, "", refreshed(kind), 6 * SECOND);

        assertTrue(played.shown.size() > 40, () -> "shown=" + played.shown.size());
        assertTrue(played.timedOut > 10, () -> "timedOut=" + played.timedOut);
    }

    /** Its display is at another address: the program waits for its acknowledgement and for nothing else. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = "stuck-oled | devices: {d: {kind: OLED, address: 0x3D, shows: v}} | OLED")
    void aDisplayThatDoesNotAcknowledgeHangsAProgramWithoutTimeOut(String image, String firmware, String kind) {
        Played played = played(image, firmware, "", refreshed(kind), 2 * SECOND);

        assertEquals(0, played.shown.size());
        assertEquals(0, played.answered.size());
        assertTrue(played.timedOut > 5);
    }

    /** Four quarters a step, two milliseconds each: a loop that is busy for 4 ms at a time misses some. */
    @ParameterizedTest
    @CsvSource({"oled, true", "lcd-expander, false"})
    void anEncoderReadByALoopNeedsAShortLoop(String image, boolean keepsUp) {
        boolean isExpander = image.endsWith("expander");
        Played played = played(
                image,
                "devices: {d: {kind: " + (isExpander ? "character LCD by expander" : "OLED") + ", shows: v}}",
                "",
                refreshed(isExpander ? "character LCD" : "OLED"),
                12 * SECOND);

        assertEquals(keepsUp, played.moved.equals(played.told), () -> played.moved + " " + played.told);
        assertEquals(played.moved.get(1), played.told.get(1), "the selector");
        assertEquals(played.moved.get(2), played.told.get(2), "the lever");
    }
}
