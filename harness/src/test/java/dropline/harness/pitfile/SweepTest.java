package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import dropline.bus.pit.Motion;
import java.util.List;
import org.junit.jupiter.api.Test;

class SweepTest {
    private static PitFile.Result read(String indicator) {
        return PitFile.parse("pit.yaml", """
                signals:
                  rpm: {unit: rpm, range: 0..3000, number: 1}
                segments:
                  s: {baud: 250 kbaud, controller: {adapter: native USB}}
                nodes:
                  n: {segment: s, address: 1, profile: 8-bit loop}
                panels:
                  p: {node: n, indicators: {dial: INDICATOR}}
                """.replace("INDICATOR", indicator));
    }

    private static Motion motion(String indicator) {
        PitFile.Result result = read(indicator);
        return assertInstanceOf(PitFile.Understood.class, result, result::toString)
                .pit()
                .segments()
                .get(0)
                .nodes()
                .get(0)
                .panels()
                .get(0)
                .indicators()
                .get(0)
                .motion();
    }

    private static List<String> problems(String indicator) {
        return assertInstanceOf(PitFile.Wrong.class, read(indicator)).problems().stream()
                .map(p -> p.key() + ": " + p.code())
                .toList();
    }

    @Test
    void shaftsDegreesBecomeTheSignalsUnit() {
        // 315 deg at 600 deg/s take 0.525 s (X27-class gauge steppers): the whole range in that time
        Motion motion = motion("{kind: gauge stepper, shows: rpm, speed: 600 deg/s, sweep: 315 deg}");

        assertEquals(0.525, 3000 / motion.ratePerSecond(), 1e-9);
    }

    @Test
    void stepperWithASweepNeedsNoTurn() {
        Motion motion = motion("{kind: stepper, shows: rpm, steps-per-turn: 200, slew: 400 steps/s, sweep: 180 deg}");

        // half a turn is 100 steps for 3000 rpm
        assertEquals(30, motion.step(), 1e-9);
        assertEquals(12_000, motion.ratePerSecond(), 1e-9);
    }

    @Test
    void speedInAnotherUnitThanTheShaftsIsAProblem() {
        assertEquals(
                List.of("speed: WRONG_UNIT"), problems("{kind: servo, shows: rpm, speed: 600 rpm/s, sweep: 120 deg}"));
        assertEquals(List.of("speed: WRONG_UNIT"), problems("{kind: servo, shows: rpm, speed: 600 deg/s}"));
    }

    @Test
    void turnAndSweepExcludeEachOtherAndOneMustBeThere() {
        String stepper = "{kind: stepper, shows: rpm, steps-per-turn: 200, slew: 400 steps/s";

        assertEquals(List.of("sweep: CONFLICT"), problems(stepper + ", sweep: 180 deg, turn: 6000 rpm}"));
        assertEquals(List.of("turn: MISSING_KEY"), problems(stepper + "}"));
    }
}
