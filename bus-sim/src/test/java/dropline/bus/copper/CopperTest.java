package dropline.bus.copper;

import static dropline.bus.copper.CopperPit.HUB;
import static dropline.bus.copper.CopperPit.SHORT;
import static dropline.bus.copper.CopperPit.load;
import static dropline.bus.copper.CopperPit.withResistors;
import static dropline.bus.rule.Ruling.Standing.BROKEN;
import static dropline.bus.rule.Ruling.Standing.HOLDS;
import static dropline.bus.rule.Ruling.Standing.UNKNOWN;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.pit.Fitting.PairLoad;
import dropline.bus.pit.Fitting.Reach;
import dropline.bus.pit.Wire;
import dropline.bus.rule.Ruling;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

final class CopperTest {
    private static final PairLoad EIGHTH = load(0.125);

    @Test
    void thirtyTwoUnitLoadsPassAndThirtyThreeDoNot() {
        // TI SLLA272D, bus loading: a driver that keeps to the standard drives 32; the controller's transceiver is one
        assertEquals(HOLDS, pit(31, load(1)).ruling(CopperRule.UNIT_LOADS).standing());
        assertEquals(BROKEN, pit(32, load(1)).ruling(CopperRule.UNIT_LOADS).standing());
    }

    @Test
    void twoHundredFiftySixTransceiversOfAnEighthPassAndOneMoreDoesNot() {
        // TI SLLA272D, the same section; a half and a quarter by the same ratio. Tenths do not add up exactly.
        assertEquals(32.0, Loads.sum(Collections.nCopies(256, 0.125)));
        assertTrue(Loads.sum(Collections.nCopies(257, 0.125)) > Loads.MOST_UNIT_LOADS);
        assertEquals(32.0, Loads.sum(Collections.nCopies(320, 0.1)));
        assertEquals(96_000, Loads.ohms(0.125), "Campbell MD485 manual: an eighth is 96 kohm");
    }

    @Test
    void ninetySixDevicesOfAnEighthPassWithBiasAndNinetySevenAreRefused() {
        // TI SLLA272D, bus loading: bias takes up to 20 unit loads, (32 - 20) / (1/8) = 96 devices, here the controller
        // and 95 nodes
        Ruling full = biased(95).ruling(CopperRule.UNIT_LOADS_WITH_BIAS);
        Ruling over = biased(96).ruling(CopperRule.UNIT_LOADS_WITH_BIAS);

        assertEquals(HOLDS, full.standing());
        assertEquals(0, full.margin());
        assertEquals(BROKEN, over.standing());
        assertEquals(96, BiasCount.TWENTY_UNIT_LOADS.devices(0.125));
    }

    @Test
    void modbusTakesFourDevicesOffForBiasInstead() {
        // MODBUS over serial line V1.02, 3.4.6; a second published rule, shown beside the first and never mixed with it
        assertEquals(28, BiasCount.FOUR_DEVICES.devices(1));
        assertEquals(252, BiasCount.FOUR_DEVICES.devices(0.125));
        assertTrue(biased(3).ruling(CopperRule.UNIT_LOADS_WITH_BIAS).basis().contains("4 devices"));
    }

    @Test
    void frontOfThirtyOnePanelsIsNotRefusedForBiasThatNobodyStated() {
        // a front of 31 panels is ordinary (facts of the trade, common practice)
        List<Ruling> rulings = Copper.rule(pit(31, load(1)).wire(SHORT).pit(), 0, GroundVolts.UNKNOWN);

        assertEquals(
                List.of(), rulings.stream().filter(r -> r.standing() == BROKEN).toList());
        assertEquals(
                UNKNOWN,
                pit(31, load(1)).ruling(CopperRule.UNIT_LOADS_WITH_BIAS).standing());
    }

    @Test
    void addressesRunOutAtTwoHundredFortySeven() {
        // MODBUS over serial line V1.02, 2.2
        assertEquals(0, pit(247, EIGHTH).ruling(CopperRule.ADDRESSES).margin());
    }

    @Test
    void idlePairBelowTheThresholdIsUndefined() {
        // 200 mV: TIA-485 as given by EURASIP 10.1186/s13639-016-0042-x, table 1; 720 ohm: embedcalc RS-485 tool
        CopperPit strong = pit(1, load(1e-6)).controller(load(1e-6)).bias(719, 5, HUB);
        CopperPit weak = pit(1, load(1e-6)).controller(load(1e-6)).bias(721, 5, HUB);

        assertEquals(HOLDS, strong.ruling(CopperRule.REST_VOLTS).standing());
        assertEquals(BROKEN, weak.ruling(CopperRule.REST_VOLTS).standing());
    }

    @Test
    void pairThatNothingHoldsRestsAtNothing() {
        Ruling rest = pit(3, load(1)).withoutBias().ruling(CopperRule.REST_VOLTS);

        assertEquals(BROKEN, rest.standing());
        assertEquals(0, rest.value(), 1e-12);
    }

    @Test
    void pairOfFailSafeReceiversMayRestAtNothing() {
        assertEquals(
                HOLDS,
                pit(3, load(1)).bias(560, 5).ruling(CopperRule.REST_VOLTS).standing());
    }

    @Test
    void weakestLevelIsThatOfADriverAsWeakAsAllowed() {
        // TI SLLA628: at least 1.5 V across 54 ohm. Two terminators are 60 ohm, so all of it is there; four are 30 ohm,
        // with four unit loads 29.7
        CopperPit two = pit(1, load(1e-6)).controller(load(1e-6)).bias(560, 5);
        CopperPit four = pit(3, withTerminator()).controller(withTerminator()).terminatedAt();

        assertEquals(1.5, two.ruling(CopperRule.DRIVEN_VOLTS).value(), 1e-9);
        assertEquals(
                1.5 / 54 / (4 / 120.0 + 4 / 12_000.0),
                four.bias(560, 5).ruling(CopperRule.DRIVEN_VOLTS).value(),
                1e-9);
    }

    @Test
    void longThinCableLeavesLessAtTheFarEnd() {
        // 1 km of 24 AWG, 84.2 ohm each way (wire table, by its formula), into 120 ohm: less than half of it arrives
        Wire kilometre = new Wire(0.0842, 120, 1000, 0.05, Wire.Common.YES);
        CopperPit far =
                pit(1, load(1e-6)).controller(load(1e-6)).wire(kilometre).bias(560, 5);

        // near end: 120 || (168.4 + 120) = 84.7 ohm, above 54, so 1.5 V there, and 120 / 288.4 of it at the far end
        assertEquals(1.5 * 120 / 288.4, far.ruling(CopperRule.DRIVEN_VOLTS).value(), 1e-4);
    }

    @Test
    void terminatorsBelongAtTheTwoEndsAndNowhereElse() {
        // MODBUS over serial line V1.02, 3.4.5
        CopperPit right = pit(3, load(1)).terminatedAt(HUB, 2);
        CopperPit one = pit(3, load(1)).terminatedAt(HUB);
        CopperPit three = pit(3, load(1)).terminatedAt(HUB, 1, 2);

        assertEquals(HOLDS, right.ruling(CopperRule.TERMINATORS).standing());
        assertEquals(HOLDS, right.ruling(CopperRule.ENDS_TERMINATED).standing());
        assertEquals(HOLDS, right.ruling(CopperRule.TERMINATORS_ELSEWHERE).standing());
        assertEquals(BROKEN, one.ruling(CopperRule.ENDS_TERMINATED).standing());
        assertEquals(HOLDS, one.ruling(CopperRule.TERMINATORS).standing());
        assertEquals(BROKEN, three.ruling(CopperRule.TERMINATORS).standing());
        assertEquals(BROKEN, three.ruling(CopperRule.TERMINATORS_ELSEWHERE).standing());
    }

    @Test
    void modulesThatEachBringATerminatorAreCounted() {
        Ruling count = pit(10, withTerminator()).ruling(CopperRule.TERMINATORS);

        // the controller's end has none of its own, so that one is taken for fitted there
        assertEquals(11, count.value());
        assertEquals(BROKEN, count.standing());
        assertEquals(
                9,
                pit(10, withTerminator())
                        .ruling(CopperRule.TERMINATORS_ELSEWHERE)
                        .value());
    }

    @Test
    void wrongTerminatorReflects() {
        assertEquals(
                30.0 / 270,
                terminated(150).ruling(CopperRule.TERMINATOR_MISMATCH).value(),
                1e-12);
        assertEquals(
                HOLDS, terminated(150).ruling(CopperRule.TERMINATOR_MISMATCH).standing());
        assertEquals(
                BROKEN, terminated(220).ruling(CopperRule.TERMINATOR_MISMATCH).standing());
    }

    @Test
    void biasBelongsAtOnePlace() {
        // MODBUS over serial line V1.02, 3.4.6
        assertEquals(HOLDS, pit(4, load(1)).ruling(CopperRule.BIAS_PLACES).standing());
        assertEquals(
                4,
                pit(4, withResistors(0, 560))
                        .bias(560, 5)
                        .ruling(CopperRule.BIAS_PLACES)
                        .value());
        assertEquals(
                BROKEN,
                pit(4, load(1))
                        .bias(560, 5, HUB, 3)
                        .ruling(CopperRule.BIAS_PLACES)
                        .standing());
    }

    @Test
    void stubsAreJudgedByTheFastestEdge() {
        // TI SN65HVD10/11/12 data sheet, table 10-1: 10 ns, 0.23 m
        PairLoad fast = new PairLoad("", 1, 0, 0, 10);
        CopperPit within = pit(2, load(1)).wire(SHORT).node(fast, new Reach(1, 0.23));
        CopperPit beyond = pit(2, load(1)).wire(SHORT).node(fast, new Reach(1, 0.24));

        assertEquals(HOLDS, within.ruling(CopperRule.BRANCH).standing());
        assertEquals(BROKEN, beyond.ruling(CopperRule.BRANCH).standing());
        assertEquals(0.234, beyond.ruling(CopperRule.BRANCH).limit(), 0.0005);
    }

    @Test
    void unknownEdgeLeavesStubsUndecidedUnlessTheyAreTooLongAnyway() {
        CopperPit within = pit(2, load(1)).wire(SHORT).node(PairLoad.PLAIN, Reach.AS_THE_SEGMENT);
        CopperPit beyond = pit(2, load(1)).wire(SHORT).node(PairLoad.PLAIN, new Reach(1, 3));

        assertEquals(UNKNOWN, within.ruling(CopperRule.BRANCH).standing());
        assertEquals(BROKEN, beyond.ruling(CopperRule.BRANCH).standing());
        assertEquals(
                UNKNOWN,
                pit(2, PairLoad.PLAIN)
                        .controller(PairLoad.PLAIN)
                        .ruling(CopperRule.BRANCH)
                        .standing());
    }

    @Test
    void shorterArmsOfAStarAreBranches() {
        CopperPit star = pit(6, load(1)).wire(SHORT).star(List.of(List.of(0), List.of(1, 2, 3), List.of(4, 5)));

        // arms of 0.5, 1.5 and 1 m: the line is 2.5 m, the branch half a metre, more than the 2.34 m of 100 ns would
        // not be
        assertEquals(2.5, star.ruling(CopperRule.LINE).value(), 1e-12);
        assertEquals(0.5, star.ruling(CopperRule.BRANCH).value(), 1e-12);
    }

    @Test
    void longestArmsMakeTheLineHoweverFewBoardsAreOnThem() {
        CopperPit star = pit(3, load(1))
                .wire(SHORT)
                .node(load(1), new Reach(30, 0.05))
                .star(List.of(List.of(0, 1), List.of(2), List.of(3)));

        assertEquals(List.of(3, 1), star.pair().ends());
        assertEquals(31, star.ruling(CopperRule.LINE).value(), 1e-12);
    }

    @Test
    void edgeMayLastThreeTenthsOfABit() {
        // TIA-485 as given by EURASIP 10.1186/s13639-016-0042-x, table 1; 100 ns make 3 Mbit/s (Intersil, slide 7)
        assertEquals(
                HOLDS, pit(2, load(1)).baud(2_999_999).ruling(CopperRule.EDGE).standing());
        assertEquals(
                BROKEN, pit(2, load(1)).baud(3_000_100).ruling(CopperRule.EDGE).standing());
    }

    @Test
    void groundsMayLieSevenVoltsApart() {
        // -7 to +12 V at every receiver, for wires within 0 to 5 V of their driver's ground (TI SLLA628)
        GroundVolts within = new GroundVolts(List.of(0.0, 3.0, -4.0), 0, "drawn");
        GroundVolts beyond = new GroundVolts(List.of(0.0, 3.1, -4.0), 0, "drawn");

        assertEquals(
                HOLDS,
                pit(3, load(1)).ruling(CopperRule.GROUND_DIFFERENCE, within).standing());
        assertEquals(
                BROKEN,
                pit(3, load(1)).ruling(CopperRule.GROUND_DIFFERENCE, beyond).standing());
    }

    @Test
    void thirdWireIsAskedFor() {
        // MODBUS over serial line V1.02, 3.3.2
        assertEquals(UNKNOWN, pit(1, load(1)).ruling(CopperRule.COMMON_WIRE).standing());
        assertEquals(
                HOLDS,
                pit(1, load(1)).wire(SHORT).ruling(CopperRule.COMMON_WIRE).standing());
        Wire without = new Wire(0.0842, 120, 0.5, 0.05, Wire.Common.NO);
        assertEquals(
                BROKEN,
                pit(1, load(1)).wire(without).ruling(CopperRule.COMMON_WIRE).standing());
    }

    private static PairLoad withTerminator() {
        return withResistors(120, 0);
    }

    private static CopperPit pit(int nodes, PairLoad load) {
        return new CopperPit().nodes(nodes, load);
    }

    private static CopperPit biased(int nodes) {
        return pit(nodes, EIGHTH).controller(EIGHTH).bias(560, 5, HUB);
    }

    private static CopperPit terminated(int ohms) {
        return pit(2, load(1)).terminators(ohms, HUB, 1);
    }
}
