package dropline.harness.pitfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Dimming;
import dropline.bus.pit.Draw;
import dropline.bus.pit.Draws;
import dropline.bus.pit.Gauge;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Inlet;
import dropline.bus.pit.Node;
import dropline.bus.pit.Pit;
import dropline.bus.pit.SupplyTree;
import dropline.bus.pit.SupplyTree.Location;
import dropline.bus.pit.SupplyTree.Run;
import dropline.bus.pit.SupplyTree.Supply;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SupplyKeysTest {
    private static final String NODE = "  a: {segment: left, address: 1, profile: 8-bit loop}\n";
    private static final String SUPPLIES = """
        supplies:
          twelve volts:
            volts: 12 V
            rating: 10 A
            runs:
              tail: {from: trunk, wire: 0.75 mm2, length: 80 cm, joints: 20 mohm}
              trunk: {wire: 16 AWG, length: 3 m, strand: solid}
          port: {volts: 5 V, location: usb}
        """;

    private static String pit(String supplies, String node) {
        return PitText.with(NODE, node) + supplies;
    }

    private static String fed(String by) {
        return NODE.replace("}", ", supply: " + by + "}");
    }

    private static List<String> problems(String text) {
        return PitText.problems(text).stream()
                .map(problem -> problem.key() + ": " + problem.code())
                .toList();
    }

    @Test
    void runsFollowTheOneTheyStartAtWhateverTheirOrderInTheFile() {
        Pit pit = PitText.understood(pit(SUPPLIES, fed("tail")));

        Gauge trunk = Gauge.awg(16, false);
        assertEquals(
                new SupplyTree(
                        List.of(
                                new Supply("twelve volts", 12, 10, Location.EXTERNAL),
                                new Supply("port", 5, 0, Location.USB)),
                        List.of(
                                new Run("trunk", 0, trunk, 3, 0),
                                new Run("tail", 2, Gauge.metric(0.75, true), 0.8, 0.02)),
                        -1),
                pit.supplies());
        assertEquals(3, pit.supplies().point("tail"));
        assertEquals(0, pit.supplies().supplyOf(3));
        assertEquals(List.of(2), pit.supplies().fedFrom(0));
    }

    @Test
    void aNodeOnASupplyThatIsNotThereIsToldTheNearest() {
        String text = pit(SUPPLIES, fed("trunc"));

        assertEquals(List.of("supply: UNKNOWN_NAME"), problems(text));
        assertEquals("write supply: trunk", PitText.problems(text).get(0).fix());
    }

    @Test
    void withoutSuppliesABranchIsCalledWhatOneLikes() {
        Pit pit = PitText.understood(pit("", fed("the grey box")));

        assertEquals(
                "the grey box", pit.segments().get(0).nodes().get(0).fitting().supply());
        assertTrue(pit.supplies().isEmpty());
    }

    @ParameterizedTest
    @CsvSource({
        "41 AWG, OUT_OF_RANGE", "-1 AWG, OUT_OF_RANGE", "18.5 AWG, OUT_OF_RANGE", "0 mm2, OUT_OF_RANGE",
        "18, MISSING_UNIT", "2/0 AWG, WRONG_UNIT", "thick, WRONG_TYPE", "18 gauge, WRONG_UNIT"
    })
    void aGaugeThatIsNotInTheTableIsRefused(String wire, String code) {
        String text = pit(SUPPLIES.replace("16 AWG", wire), fed("tail"));

        assertEquals(List.of("wire: " + code), problems(text));
    }

    @Test
    void aRunMayBeGuessedOrMeasured() {
        String text = pit(SUPPLIES.replace("length: 3 m", "length: about 3 m"), fed("tail"))
                .replace("80 cm", "\"80 cm, measured 2026-11-20\"");

        assertEquals(3, PitText.understood(text).supplies().runs().get(0).metres());
        assertEquals(0.8, PitText.understood(text).supplies().runs().get(1).metres());
    }

    @Test
    void runsThatLeadBackToThemselvesAreRefused() {
        String text = pit(SUPPLIES.replace("trunk: {", "trunk: {from: tail, "), fed("tail"));

        assertEquals(List.of("from: CIRCULAR", "from: CIRCULAR"), problems(text));
    }

    @Test
    void aRunStartsAtItsOwnSupplyOrARunOfIt() {
        String text = pit(SUPPLIES.replace("from: trunk", "from: port"), fed("tail"));

        assertEquals(List.of("from: UNKNOWN_NAME"), problems(text));
    }

    @Test
    void noTwoSuppliesOrRunsHaveTheSameName() {
        String text = pit(SUPPLIES.replace("port:", "tail:"), fed("tail"));

        assertEquals(List.of("tail: DUPLICATE_NAME"), problems(text));
    }

    @Test
    void aBoardSaysHowItMakesItsVolts() {
        String board = ", usb: yes, board: {profile: 8-bit loop, draws: 50 mA, converter: switching, efficiency: 0.9,"
                + " board-volts: 5 V, works-down-to: about 6 V}}";
        Pit pit = PitText.understood(pit(SUPPLIES, fed("trunk").replace("}", board)));

        Node node = pit.segments().get(0).nodes().get(0);
        assertEquals(
                new Inlet(Inlet.Converter.SWITCHING, 5, 0.9, 6, true, false),
                node.fitting().inlet());
    }

    @Test
    void efficiencyIsOfNoUseToALinearRegulator() {
        String board = ", board: {profile: 8-bit loop, converter: linear, efficiency: 0.9}}";

        assertEquals(
                List.of("efficiency: UNUSED_KEY"),
                problems(pit(SUPPLIES, fed("trunk").replace("}", board))));
    }

    private static Indicator indicator(String text) {
        String panel = "  speed:\n    node: b\n    indicators:\n      readout: " + text + "\n";
        String whole = PitText.SMALL.substring(0, PitText.SMALL.indexOf("  speed:")) + panel;
        return PitText.understood(whole)
                .segments()
                .get(0)
                .nodes()
                .get(1)
                .panels()
                .get(0)
                .indicators()
                .get(0);
    }

    @Test
    void whatLightsTakesNothingWhileDarkAndWhatMovesAsMuchWhileItStands() {
        Draws lamp = indicator("{kind: lamp, shows: airspeed, draws: 15 mA}").draws();
        Draws servo = indicator("{kind: servo, shows: airspeed, speed: 90 kt/s, draws: about 150 mA}")
                .draws();

        assertEquals(new Draw(0, false), lamp.rest());
        assertEquals(new Draw(150_000, true), servo.rest());
        assertFalse(servo.start().isKnown());
        assertTrue(lamp.throughBoard());
    }

    @Test
    void aFilamentTakesMoreForAMoment() {
        Draws draws = indicator("{like: 12 V filament lamp, shows: airspeed}").draws();

        assertEquals(new Draw(800_000, true), draws.greatest());
        assertEquals(50_000_000, draws.startNanos());
        assertFalse(draws.throughBoard());
    }

    @Test
    void aZoneSaysHowItIsDimmed() {
        Indicator zone = indicator("{kind: backlight zone, shows: airspeed, curve: square, bits: 10}");

        assertEquals(new Dimming(Dimming.Curve.SQUARE, 10), zone.dimming());
    }

    @Test
    void aStartNeedsItsTimeAndItsUsualCurrent() {
        String readout = "readout: {";
        assertEquals(
                List.of("start-lasts: MISSING_KEY"),
                problems(PitText.with(readout, "readout: {draws: 100 mA, start-draws: 1 A, ")));
        assertEquals(List.of("draws: MISSING_KEY"), problems(PitText.with(readout, "readout: {rest-draws: 10 mA, ")));
    }
}
