package dropline.harness.wiring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.harness.pitfile.PitFile;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Rules: MODBUS over serial line V1.02, 3.3.2, 3.4.4 to 3.4.6. */
final class WiringSheetTest {
    private final String sheet = WiringSheet.of(HutPit.pit());

    @Test
    void cautionsStandBeforeAnythingThatTellsPeopleToTouchAWire() {
        int cautions = sheet.indexOf("Never tie a board to USB and to the external supply at once without isolation.");

        assertTrue(cautions > 0 && cautions < sheet.indexOf("USB leads"), sheet);
        assertTrue(sheet.indexOf("Fuse each supply branch close to its source.") < cautions, sheet);
    }

    @Test
    void chainIsListedInItsOrderWithWhatToFitAndWhatToRemove() {
        assertEquals("""
            250000 baud 8N1. A chain: from board to board, no branches.
                 on the cable    address  connector  supply  fit or remove
              1  middle (polls)                              END: terminator 120 ohm
              2  oil                   1  -          -       REMOVE its own 120 ohm; BIAS: keep its own, 2 x 560 ohm
              3  fuel                  2  -          -       END: keep its own 120 ohm; REMOVE its own bias, 2 x 560 ohm
              Terminators: at middle and fuel, nowhere else.
              Bias: at oil, nowhere else.
            """, part("Segment aft"));
    }

    @Test
    void controllerInTheMiddleStandsInTheMiddle() {
        List<String> lines = part("Segment front").lines().toList();

        assertTrue(lines.get(2).startsWith("  1  trim"), lines::toString);
        assertTrue(
                lines.get(3).startsWith("  2  middle (polls)") && lines.get(3).endsWith("-"), lines::toString);
        assertTrue(lines.get(2).contains("5-way, keyed  left 12 V  END: keep its own 120 ohm"), lines::toString);
    }

    @Test
    void everyPortOfTransceiversHasTwoEndsOfItsOwn() {
        String roof = part("Segment roof");

        assertTrue(roof.contains("A star whose 2 arms are pairs of their own: do not join them."), roof);
        assertTrue(roof.contains("Terminators: at fan and lamp, nowhere else."), roof);
        assertTrue(roof.contains("Terminators: at fan and flood, nowhere else."), roof);
        assertTrue(roof.contains("Arm left:") && roof.contains("Arm right:"), roof);
        assertTrue(roof.contains("its own 2 x 20000 ohm may stay: too weak to count"), roof);
    }

    @Test
    void joinedArmsHaveTwoTerminatorsAndAWarning() {
        String floor = part("Segment floor");

        assertTrue(floor.contains("only two of them can be terminated"), floor);
        assertTrue(floor.contains("Terminators: at pump-3 and pump-1, nowhere else."), floor);
        assertTrue(floor.contains("tee (where the arms meet)"), floor);
        assertTrue(floor.contains("none, says the pit file (bias: no)."), floor);
    }

    @Test
    void weakBiasThatIsStrongTogetherIsSaid() {
        // 1 kohm twice is 500 ohm
        String text = HutPit.TEXT.replace("red: {terminator: 120 ohm, bias: 560 ohm}", "red: {bias: 1 kohm}");

        String aft = part(WiringSheet.of(HutPit.pit(text)), "Segment aft");

        assertTrue(aft.contains("its own 2 x 1000 ohm may stay: too weak to count\n"), aft);
        assertTrue(aft.contains("REMOVE its own bias, 2 x 1000 ohm\n"), aft);
        assertTrue(aft.contains("come to 2 x 500 ohm together"), aft);
        assertFalse(sheet.contains("ohm together"), sheet);
    }

    @Test
    void ownBiasWhereThePitFileSaysThereIsNoneIsSaid() {
        String text = HutPit.TEXT.replace("pump-2: {", "pump-2: {transceiver: red, ");

        String floor = part(WiringSheet.of(HutPit.pit(text)), "Segment floor");

        assertTrue(floor.contains("its own bias, 2 x 560 ohm, is there: the pit file says bias: no"), floor);
    }

    @Test
    void cableThatIsDescribedIsJudged() {
        String text = HutPit.TEXT.replace(
                "aft: {baud: 250 kbaud,", "aft: {cable: {step: 40 cm, stub: 10 cm, common: yes}, baud: 250 kbaud,");

        String aft = part(WiringSheet.of(HutPit.pit(text)), "Segment aft").replaceAll(" +", " ");

        assertTrue(aft.contains(" Length: 0.8 m from end to end."), aft);
        // both modules carry a terminator and bias, and the controller's end is taken to be given one
        assertTrue(aft.contains(" FAIL terminators aft 3 at most 2 -1"), aft);
        assertTrue(aft.contains(" caution places with bias aft 2 at most 1 -1"), aft);
        assertTrue(aft.contains(" pass length end to end aft 0.8 m at most 400 m"), aft);
        assertTrue(aft.contains("Take off all but one at each end, modules' own included"), aft);
        assertFalse(part("Segment aft").contains("rules of copper"), sheet);
    }

    @Test
    void boardStraightOnUsbHasNothingToTerminate() {
        assertTrue(part("Segment desk").contains("no pair, no terminator, no bias"), sheet);
        assertTrue(sheet.contains("4. clipboard (native USB, no latency timer): straight on USB."), sheet);
    }

    @Test
    void leadsSayWhatHangsOnThemAndWhatIsShared() {
        String leads = part("USB leads").replaceAll("\\s+", " ");

        assertTrue(
                leads.contains("1. middle (1 ms timer, latency timer 1 ms): a board that polls segments front and aft"
                        + ", a port for each; they share its program and this lead."),
                leads);
        assertTrue(leads.contains("2. fan (16 ms timer, latency timer 16 ms): one transceiver for each port"), leads);
        assertTrue(leads.contains("3. tee (1 ms timer, latency timer 1 ms): a passive splitter"), leads);
    }

    @Test
    void currentsOfABranchAreAddedAndWhatIsMissingIsSaid() {
        // stated: 35 mA of a board, 90 and 20 mA of panels; guessed: 40 mA of a preset's board, about 1 A of a panel,
        // and a panel of 200 mA stated and 15 mA of a preset's lamp
        String supplies = part("Supplies");

        assertTrue(
                supplies.contains("left 12 V                2  145 mA  1.255 A  1 of 7 figures, first slip indicator"),
                supplies);
        assertTrue(
                supplies.contains("(no branch stated)       9       -        -  9 of 9 figures, first oil"), supplies);
        assertTrue(supplies.contains("Currents are running currents, not starting, stalled or peak ones."), supplies);
    }

    @Test
    void describedSuppliesStandWithTheirRuns() {
        String text = HutPit.TEXT + """
                supplies:
                  left 12 V:
                    volts: 12 V
                    runs:
                      tail: {from: trunk, wire: 0.75 mm2, length: 80 cm}
                      trunk: {wire: 18 AWG, strand: solid, length: 3 m}
                """;
        PitFile.Result result = PitFile.parse("hut.yaml", text);
        PitFile.Understood hut = assertInstanceOf(PitFile.Understood.class, result, result::toString);

        String supplies = part(WiringSheet.of(hut.pit()), "Supplies");

        assertTrue(supplies.startsWith("""
              supply or run  feeds from  wire          one way
              left 12 V      12 V
                trunk        left 12 V   18 AWG solid      3 m
                  tail       trunk       0.75 mm2        80 cm
            """), supplies);
        assertTrue(supplies.contains("left 12 V                2  145 mA"), supplies);
    }

    @Test
    void everyBoardHasALabel() {
        String labels = part("Labels to cut out");

        assertTrue(labels.contains("| trim                         |  | heat                         |"), labels);
        assertTrue(labels.contains("| floor, address 4             |"), labels);
        assertTrue(labels.contains("| plug 5-way, keyed            |"), labels);
        assertTrue(labels.lines().allMatch(line -> line.length() <= 100), labels);
    }

    /** What stands under a heading. */
    private String part(String heading) {
        return part(sheet, heading);
    }

    private static String part(String sheet, String heading) {
        String rule = heading + "\n" + "=".repeat(heading.length()) + "\n";
        int begin = sheet.indexOf(rule);
        assertTrue(begin >= 0, sheet);
        int end = sheet.indexOf("\n\n", begin);
        String next = sheet.substring(begin + rule.length());
        // a port's table is set off by an empty line too: a part ends where a heading begins
        int until = next.indexOf("\n===");
        return until < 0 ? next : end < 0 ? next : next.substring(0, next.lastIndexOf("\n\n", until) + 1);
    }
}
