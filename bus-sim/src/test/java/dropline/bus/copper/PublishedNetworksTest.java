package dropline.bus.copper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.copper.Circuit.Bias;
import dropline.bus.copper.Circuit.Load;
import dropline.bus.copper.Circuit.Terminator;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** Worked examples of bias and termination, as published; each names where. All on one point: no cable. */
final class PublishedNetworksTest {
    private static final double MILLIVOLT = 1e-3;

    @Test
    void thirtyTwoNodesWithoutTerminatorsTakeTwoResistorsOfFourAndAHalfKilohm() {
        // B&B Electronics, RS-422/485 Application Note (2006), p. 19, example 2: 32 nodes are 375 ohm, 200 mV need
        // 0.53 mA, so 5 V need 9375 ohm in all, 9 kohm of them in the two resistors
        Circuit circuit = circuit(loads(32, 1), terminators(), bias(4500, 5));

        double rest = rest(circuit, LoadModel.LINE_TO_LINE);

        assertEquals(0.2, rest, 0.5 * MILLIVOLT);
        assertEquals(0.53e-3, rest / 375, 0.005e-3);
    }

    @Test
    void tenNodesAndTwoTerminatorsTakeTwoResistorsOfSixHundredEightyFiveOhm() {
        // the same note, p. 18, example 1, its numbers from memory: 57.14 ohm, 3.5 mA, 1429 ohm in all, 685 each
        Circuit circuit = circuit(loads(10, 1), terminators(120, 120), bias(685, 5));

        assertEquals(57.14, ohmsBare(circuit, LoadModel.LINE_TO_LINE), 0.005);
        assertEquals(0.2, rest(circuit, LoadModel.LINE_TO_LINE), 0.5 * MILLIVOLT);
    }

    @Test
    void tenNodesThatEachBringABiasPairHoldThePairTogether() {
        // B&B Electronics, RS-422 and RS-485 Applications Ebook, p. 35: ten pairs of 4.7 kohm, two of 120 ohm: 5 mA and
        // 285 mV in rounded steps (written -285 mV: its A and B are the other way round). The other model gives 293.
        Bias[] all = new Bias[10];
        for (int n = 0; n < all.length; n++) {
            all[n] = new Bias(0, 4700, 5, true);
        }
        Circuit circuit = circuit(loads(10, 1), terminators(120, 120), all);

        assertEquals(0.285, rest(circuit, LoadModel.LINE_TO_LINE), 0.03 * 0.285);
        assertEquals(0.2865, rest(circuit, LoadModel.LINE_TO_LINE), 0.05 * MILLIVOLT);
        assertEquals(0.2931, rest(circuit, LoadModel.LINE_TO_GROUND), 0.05 * MILLIVOLT);
    }

    @Test
    void fullyLoadedPairWithFailSafeBiasRestsAtAQuarterOfAVolt() {
        // TI SLYT324 and an older SLLA272, formula from memory: 528 ohm at 4.75 V for 250 mV, with the far terminator
        // at 120 and the near one at 120 R / (R - 60) = 135.4 ohm. Only loads from each line to ground give it.
        double each = 4.75 / (0.25 * (1 / 375.0 + 4 / 120.0));
        double near = 120 * each / (each - 60);
        Circuit circuit = circuit(loads(32, 1), terminators(120, near), bias(each, 4.75));

        assertEquals(528, each, 0.5);
        assertEquals(135.4, near, 0.05);
        assertEquals(0.250, rest(circuit, LoadModel.LINE_TO_GROUND), 1e-9);
        assertTrue(rest(circuit, LoadModel.LINE_TO_LINE) < 0.245, "the other model does not");
    }

    @Test
    void formulaWithAnExtraOneFallsShortOfWhatItPromises() {
        // a third party's form, (Vs/Vab + 1) / 0.036, promises 300 mV with 333.33 and 146.34 ohm at 3.3 V
        Circuit loaded = circuit(loads(32, 1), terminators(120, 146.34), bias(333.33, 3.3));
        Circuit bare = circuit(loads(32, 1e-9), terminators(120, 146.34), bias(333.33, 3.3));
        double re = 3.3 / 0.3 / 0.036;
        Circuit right = circuit(loads(32, 1), terminators(120, 120 * re / (re - 60)), bias(re, 3.3));

        assertEquals(0.275, rest(loaded, LoadModel.LINE_TO_GROUND), 0.5 * MILLIVOLT);
        assertEquals(0.297, rest(bare, LoadModel.LINE_TO_GROUND), 0.5 * MILLIVOLT);
        assertEquals(305.6, re, 0.05);
        assertEquals(0.300, rest(right, LoadModel.LINE_TO_GROUND), 0.5 * MILLIVOLT);
    }

    @Test
    void twoTerminatorsAloneTakeSevenHundredTwentyOhmOnEachSide() {
        // embedcalc, RS-485 tool: at most 720 ohm on each side at 5 V
        assertEquals(0.2, rest(circuit(loads(1, 1e-9), terminators(120, 120), bias(720, 5)), model()), 1e-6);
        assertTrue(rest(circuit(loads(1, 1e-9), terminators(120, 120), bias(721, 5)), model()) < 0.2);
    }

    @Test
    void polarisationOfModbusHoldsThePair() {
        // MODBUS over serial line V1.02, 3.4.6: 450 to 650 ohm; the volts follow by arithmetic
        assertEquals(
                0.3125, rest(circuit(loads(1, 1e-9), terminators(120, 120), bias(450, 5)), model()), 0.05 * MILLIVOLT);
        assertEquals(
                0.2206, rest(circuit(loads(1, 1e-9), terminators(120, 120), bias(650, 5)), model()), 0.05 * MILLIVOLT);
    }

    @Test
    void driversLoadOfFiftyFourOhmIsNotWhatItIsSaidToBeMadeOf() {
        // TI SLLA628 explains 54 ohm by two terminators and 32 unit loads: these are 51.7 or 55.6
        Circuit full = circuit(loads(32, 1), terminators(120, 120));

        assertEquals(51.72, ohmsBare(full, LoadModel.LINE_TO_LINE), 0.005);
        assertEquals(55.56, ohmsBare(full, LoadModel.LINE_TO_GROUND), 0.005);
        assertEquals(54, PairNetwork.DRIVER_OHMS);
    }

    @Test
    void conservativeModelLeavesLessAtRestAndDriven() {
        for (int nodes = 1; nodes <= 32; nodes++) {
            for (double ohms : new double[] {390, 560, 4700}) {
                Circuit circuit = circuit(loads(nodes, 1), terminators(120, 120), bias(ohms, 5));
                PairNetwork across = new PairNetwork(circuit, LoadModel.CONSERVATIVE, GroundVolts.UNKNOWN);
                PairNetwork toGround = new PairNetwork(circuit, LoadModel.LINE_TO_GROUND, GroundVolts.UNKNOWN);

                assertTrue(across.rest(0) < toGround.rest(0), "nodes=" + nodes + " ohms=" + ohms);
                assertTrue(across.leastDriven() <= toGround.leastDriven(), "nodes=" + nodes + " ohms=" + ohms);
            }
        }
    }

    /** Without loads worth the name, both models are the same. */
    private static LoadModel model() {
        return LoadModel.LINE_TO_LINE;
    }

    private static double rest(Circuit circuit, LoadModel model) {
        return new PairNetwork(circuit, model, GroundVolts.UNKNOWN).rest(0);
    }

    private static double ohmsBare(Circuit circuit, LoadModel model) {
        return new PairNetwork(circuit.withBiases(List.of()), model, GroundVolts.UNKNOWN).ohms(0);
    }

    private static Circuit circuit(List<Load> loads, List<Terminator> terminators, Bias... biases) {
        return new Circuit(List.of(), List.of(), loads, terminators, List.of(biases), 0);
    }

    private static List<Load> loads(int count, double unitLoad) {
        return java.util.Collections.nCopies(count, new Load(0, unitLoad));
    }

    private static List<Terminator> terminators(double... ohms) {
        return DoubleStream.of(ohms).mapToObj(one -> new Terminator(0, one)).toList();
    }

    private static Bias bias(double ohms, double volts) {
        return new Bias(0, ohms, volts, false);
    }
}
