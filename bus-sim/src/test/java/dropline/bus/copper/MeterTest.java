package dropline.bus.copper;

import static dropline.bus.copper.CopperPit.HUB;
import static dropline.bus.copper.CopperPit.SHORT;
import static dropline.bus.copper.CopperPit.load;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.copper.CopperFault.Kind;
import dropline.bus.copper.Meter.Further;
import dropline.bus.copper.Meter.Suspect;
import dropline.bus.copper.Meter.Taken;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Two terminators of 120 ohm, bias of 2 x 560 ohm to 5 V at the controller, ten boards. */
final class MeterTest {
    private static final int LAST = 9;

    private final Meter meter = new Meter(pit().pair());

    @Test
    void twoTerminatorsReadAboutSixtyOhmOneHundredTwentyAndThreeForty() {
        // common practice: 120 ohm side by side
        assertTrue(range(Kind.NOTHING, Reading.OHMS).distance(60) < 1);
        assertTrue(range(Kind.TERMINATOR_MISSING, Reading.OHMS).distance(120) < 1);
        assertTrue(range(Kind.TERMINATOR_EXTRA, Reading.OHMS).distance(40) < 1);
        assertTrue(range(Kind.TERMINATOR_ON_EVERY_MODULE, Reading.OHMS).distance(120.0 / 11) < 1);
    }

    @Test
    void idleVoltsFollowTheDividerOfBiasAndTerminators() {
        // by hand: 5 V x 60 / (2 x 560 + 60), at most; ten unit loads leave less
        assertTrue(range(Kind.NOTHING, Reading.IDLE).distance(5.0 * 60 / 1180) < 1);
        assertTrue(range(Kind.TERMINATOR_MISSING, Reading.IDLE).distance(5.0 * 120 / 1240) < 1);
        assertTrue(range(Kind.BIAS_DOUBLED, Reading.IDLE).distance(5.0 * 60 / 620) < 1);
        assertTrue(range(Kind.TERMINATOR_EXTRA, Reading.IDLE).distance(5.0 * 40 / 1160) < 1);
    }

    @Test
    void fortyOhmAndHundredSeventyMillivoltsAreAThirdTerminator() {
        List<Suspect> suspects = meter.suspects(List.of(ohms(40), idle(HUB, 0.17)));

        assertEquals(List.of(Kind.TERMINATOR_EXTRA), kinds(suspects));
    }

    @Test
    void sixtyOhmAndAQuarterOfAVoltAreSound() {
        assertEquals(
                Kind.NOTHING,
                kinds(meter.suspects(List.of(ohms(58), idle(HUB, 0.25)))).get(0));
    }

    @Test
    void missingTerminatorAndDoubledBiasReadTheSameUntilOhmsAreRead() {
        // 5 V x 120 / 1240 = 5 V x 60 / 620
        List<Taken> taken = List.of(idle(HUB, 5.0 * 60 / 620));

        List<Suspect> suspects = meter.suspects(taken);
        List<Further> further = meter.further(suspects, taken);

        assertTrue(kinds(suspects).containsAll(List.of(Kind.TERMINATOR_MISSING, Kind.BIAS_DOUBLED)));
        int missing = kinds(suspects).indexOf(Kind.TERMINATOR_MISSING);
        int doubled = kinds(suspects).indexOf(Kind.BIAS_DOUBLED);
        assertTrue(missing < doubled, "the commoner first");
        assertTrue(further.stream()
                .anyMatch(reading -> reading.ranges()
                        .get(missing)
                        .isApartFrom(reading.ranges().get(doubled))));
        assertTrue(further.stream().allMatch(reading -> reading.reading() != Reading.IDLE || reading.stop() != HUB));
    }

    @Test
    void exchangedWiresReadTheOtherWayRound() {
        // MODBUS over serial line V1.02, 3.3.2: at rest D1 is above D0
        assertEquals(List.of(Kind.SWAPPED), kinds(meter.suspects(List.of(idle(HUB, -0.25)))));
    }

    @Test
    void jointIsFoundBetweenTheBoardsWhereTheReadingChanges() {
        Circuit bad = new CopperFault(Kind.BAD_JOINT, 3, 4, 150, false).on(pit().circuit());
        PairNetwork network = new PairNetwork(bad, LoadModel.LINE_TO_LINE, GroundVolts.UNKNOWN);
        List<Taken> taken = new ArrayList<>();
        for (int stop : List.of(HUB, 3, 4, LAST)) {
            taken.add(idle(stop, network.rest(stop)));
        }
        taken.add(ohms(
                new PairNetwork(bad.withBiases(List.of()), LoadModel.LINE_TO_LINE, GroundVolts.UNKNOWN).ohms(HUB)));

        Suspect suspect = meter.suspects(taken).get(0);

        assertEquals(Kind.BAD_JOINT, suspect.closest().kind());
        assertTrue(
                suspect.faults().stream().allMatch(fault -> fault.at() == 3 && fault.beyond() == 4),
                () -> suspect.faults().toString());
        assertTrue(suspect.faults().stream().anyMatch(fault -> Math.abs(fault.ohms() - 150) < 40));
    }

    @Test
    void everyFaultIsNamedByWhatItReads() {
        for (CopperFault fault : meter.examples()) {
            List<Taken> taken = new ArrayList<>();
            for (Reading reading : Reading.values()) {
                for (int stop : List.of(HUB, LAST)) {
                    Range range = meter.range(fault, reading, stop);
                    taken.add(new Taken(reading, stop, (range.low() + range.high()) / 2));
                }
            }

            assertTrue(kinds(meter.suspects(taken)).contains(fault.kind()), () -> fault + " of " + taken);
        }
    }

    @Test
    void readingThatNoFaultExplainsIsNotExplained() {
        List<Taken> taken = List.of(ohms(60), idle(HUB, 3));

        assertEquals(List.of(), meter.suspects(taken));
        assertFalse(meter.nearest(taken).faults().isEmpty());
    }

    @Test
    void resistorsOfModulesCannotBeUnplugged() {
        Meter own = new Meter(new CopperPit()
                .nodes(3, CopperPit.withResistors(0, 560))
                .bias(560, 5)
                .pair());

        assertFalse(own.hasBiasToUnplug());
        assertTrue(meter.hasBiasToUnplug());
    }

    private static CopperPit pit() {
        return new CopperPit()
                .nodes(10, load(0.125))
                .controller(load(0.125))
                .wire(SHORT)
                .bias(560, 5, HUB);
    }

    private Range range(Kind kind, Reading reading) {
        CopperFault fault = meter.examples().stream()
                .filter(one -> one.kind() == kind)
                .findFirst()
                .orElseThrow();
        return meter.range(fault, reading, HUB);
    }

    private static List<Kind> kinds(List<Suspect> suspects) {
        return suspects.stream().map(suspect -> suspect.closest().kind()).toList();
    }

    private static Taken ohms(double value) {
        return new Taken(Reading.OHMS, HUB, value);
    }

    private static Taken idle(int stop, double volts) {
        return new Taken(Reading.IDLE, stop, volts);
    }
}
