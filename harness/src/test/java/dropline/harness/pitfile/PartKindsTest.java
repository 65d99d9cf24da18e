package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Control;
import dropline.bus.pit.Control.Detent;
import dropline.bus.pit.Control.Matrix;
import dropline.bus.pit.Control.Positions;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Glow;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Motion;
import dropline.bus.pit.Motion.Zeroing;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every kind of indicator and control as it is written. */
final class PartKindsTest {
    private static final String CARD = "{kind: gauge stepper, shows: heading, speed: 90 deg/s}";
    private static final String KNOB = "{kind: encoder, number: 1}";

    @Test
    void aStepperIsWrittenInStepsAndTurnsInTheUnitOfItsSignal() {
        Indicator stepper = indicator("{kind: stepper, shows: heading, steps-per-turn: 2000, turn: 360 deg,"
                + " slew: 1000 steps/s, acceleration: 5000 steps/s2, zeroing: sensor, zeroing-speed: 200 steps/s}");

        assertEquals(new Motion(180, 900, 0.18, Zeroing.SENSOR, 36), stepper.motion());
    }

    @Test
    void aGaugeStepperMayGainSpeedAndFindItsZeroToo() {
        Indicator gauge = indicator("{kind: gauge stepper, shows: airspeed, speed: 90 kt/s, acceleration: 900 kt/s²,"
                + " zeroing: stop, zeroing-speed: 30 kt/s}");

        assertEquals(new Motion(90, 900, 0, Zeroing.STOP, 30), gauge.motion());
    }

    @Test
    void everyOtherKindOfIndicatorHasItsKeys() {
        assertEquals(
                new Glow(60_000_000, 90_000_000),
                indicator("{kind: filament lamp, shows: airspeed, rise: 60 ms, fall: 90 ms}")
                        .glow());
        assertEquals(
                80_000_000,
                indicator("{kind: flag, shows: airspeed, delay: 80 ms}").delayNanos());
        assertEquals(
                Motion.atOnce(40),
                indicator("{kind: drum counter, shows: airspeed, speed: 40 kt/s}")
                        .motion());
        assertEquals(
                2_000_000,
                indicator("{kind: backlight zone, shows: airspeed, refresh-every: 2 ms}")
                        .refreshEveryNanos());
        assertTrue(indicator("{kind: VFD, shows: [airspeed, heading], refresh-every: 20 ms, refresh-takes: 4 ms}")
                .kind()
                .refreshes());
        assertEquals(
                Kind.LED_BAR,
                indicator("{kind: LED bar, shows: airspeed, refresh-every: 20 ms, refresh-takes: 1 ms}")
                        .kind());
    }

    @Test
    void everyKindOfControlHasItsKeys() {
        assertEquals(
                new Positions(5, 12_000_000, 255),
                control("{kind: selector, number: 1, positions: 5, open-for: 12 ms, open-value: 255}")
                        .positions());
        assertEquals(
                new Positions(3, 8_000_000, 1),
                control("{kind: three-way toggle, number: 1, open-for: 8 ms}").positions());
        assertEquals(
                Control.Kind.HELD_TOGGLE,
                control("{kind: held toggle, number: 1}").kind());
        assertEquals(
                Control.Kind.HELD_BUTTON,
                control("{kind: held button, number: 1}").kind());
        assertEquals(
                new Matrix(4, 3, 10_000_000, false),
                control("{kind: key matrix, number: 1, rows: 4, columns: 3, scan: 10 ms, diodes: no}")
                        .matrix());
        assertEquals(
                List.of(new Detent("reverse idle", -200), new Detent("idle", 0), new Detent("full", 1000)),
                control("{kind: lever, number: 1, detents: [reverse idle -200, idle 0, full 1000]}")
                        .detents());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        {kind: stepper, shows: heading, turn: 360 deg, slew: 9 steps/s} | MISSING_KEY | steps-per-turn: whole number
        {kind: stepper, shows: heading, steps-per-turn: 9, turn: 360, slew: 9 steps/s} | MISSING_UNIT | such as 360 deg
        {kind: stepper, shows: heading, steps-per-turn: 9, turn: 3 kt, slew: 9 steps/s} | WRONG_UNIT | an amount in deg,
        {kind: stepper, shows: heading, steps-per-turn: 9, turn: 3 deg, slew: 9 deg/s} | WRONG_UNIT | a speed in steps/s
        {kind: stepper, shows: heading, speed: 9 deg/s} | UNUSED_KEY | speed only for gauge stepper, servo, drum counter
        {kind: gauge stepper, shows: heading, speed: 600} | MISSING_UNIT | speed above 0 in the signal's unit
        {kind: gauge stepper, shows: heading, speed: 9 deg/s, zeroing: sensor} | MISSING_KEY | since zeroing is sensor
        {kind: gauge stepper, shows: heading, speed: 9 deg/s, zeroing-speed: 9 deg/s} | UNUSED_KEY | only with zeroing:
        {kind: gauge stepper, shows: heading, speed: 9 deg/s, zeroing: stop, zeroing-speed: 9 deg/s} | CONFLICT | wrap
        {kind: gauge stepper, shows: heading, speed: 9 deg/s, acceleration: 9 deg/s} | WRONG_UNIT | steps/s2
        {kind: gauge stepper, shows: heading, speed: 9 deg/s, acceleration: 0 deg/s2} | OUT_OF_RANGE | above 0
        {kind: flag, shows: airspeed} | MISSING_KEY | delay: time
        {kind: flag, shows: [airspeed, heading], delay: 9 ms} | CONFLICT | one signal, since it has one pointer
        {kind: filament lamp, shows: airspeed, rise: 60 ms} | MISSING_KEY | fall: time
        {kind: lamp, shows: airspeed, rise: 60 ms} | UNUSED_KEY | rise only for filament lamp
        {kind: VFD, shows: airspeed, refresh-every: 20 ms} | MISSING_KEY | refresh-takes: time
        {kind: LED bar, shows: [airspeed, heading], refresh-every: 9 ms, refresh-takes: 1 ms} | CONFLICT | one signal
        {kind: drum counters, shows: airspeed, speed: 40 kt/s} | WRONG_TYPE | write kind: drum counter
        """)
    void whatDoesNotSuitAnIndicatorIsSaid(String written, String code, String says) {
        said(PitText.message(CARD, written), code, says);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        {kind: selector, number: 1} | MISSING_KEY | positions: whole number
        {kind: selector, number: 1, positions: 5, open-for: 12 ms, debounce: 5 ms} | MISSING_KEY | longer than debounce
        {kind: selector, number: 1, positions: 5, open-value: 4} | CONFLICT | 5 or more, since positions are 0..4
        {kind: toggle, number: 1, open-for: 12 ms} | UNUSED_KEY | open-for only for three-way toggle, selector
        {kind: key matrix, number: 1, rows: 4, columns: 5, scan: 10 ms} | OUT_OF_RANGE | at most 16 keys
        {kind: key matrix, number: 1, rows: 4, columns: 4} | MISSING_KEY | scan: time
        {kind: lever, number: 1} | MISSING_KEY | detents: list of two or more
        {kind: lever, number: 1, detents: idle 0} | WRONG_TYPE | write them in brackets
        {kind: lever, number: 1, detents: [idle 0, climb]} | WRONG_TYPE | a name and a position
        {kind: lever, number: 1, detents: [idle 0, full -5]} | OUT_OF_RANGE | above the one before
        {kind: lever, number: 1, detents: [idle 0, full 99999]} | OUT_OF_RANGE | -32767..32767
        {kind: lever, number: 1, detents: [idle 0, full 10], dead-band: 5} | CONFLICT | between idle and full
        {kind: axis, number: 1, detents: [idle 0, full 10]} | UNUSED_KEY | detents only for lever
        """)
    void whatDoesNotSuitAControlIsSaid(String written, String code, String says) {
        said(PitText.message(KNOB, written), code, says);
    }

    private static void said(String message, String code, String says) {
        assertTrue(message.contains(": " + code + "\n"), message);
        assertTrue(message.contains(says), message);
    }

    private static Indicator indicator(String written) {
        return PitText.understood(PitText.with(CARD, written))
                .segments()
                .get(0)
                .nodes()
                .get(0)
                .panels()
                .get(0)
                .indicators()
                .get(0);
    }

    private static Control control(String written) {
        return PitText.understood(PitText.with(KNOB, written))
                .segments()
                .get(0)
                .nodes()
                .get(0)
                .panels()
                .get(0)
                .controls()
                .get(0);
    }
}
