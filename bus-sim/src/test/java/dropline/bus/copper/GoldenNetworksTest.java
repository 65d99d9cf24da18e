package dropline.bus.copper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.copper.Circuit.Bias;
import dropline.bus.copper.Circuit.Joint;
import dropline.bus.copper.Circuit.Load;
import dropline.bus.copper.Circuit.Terminator;
import dropline.bus.pit.Cable;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/**
 * Random networks and pairs against what a general circuit simulator, ngspice, made of the same: {@code networks.txt},
 * made by {@code src/test/golden/networks.py}, where its format stands.
 */
final class GoldenNetworksTest {
    private static final double RELATIVE = 1e-6;

    /** What is left of volts that cancel, V. */
    private static final double ABSOLUTE = 1e-10;

    private final List<List<String[]>> all = groups();

    @Test
    void networksOfResistorsAreAsTheCircuitSimulatorHasThem() {
        List<List<String[]>> networks =
                all.stream().filter(g -> g.get(0)[0].equals("network")).toList();

        networks.forEach(GoldenNetworksTest::checkNetwork);

        assertTrue(networks.size() >= 200, () -> "networks=" + networks.size());
    }

    @Test
    void wholePairsAreAsTheCircuitSimulatorHasThem() {
        List<List<String[]>> pairs =
                all.stream().filter(g -> g.get(0)[0].equals("pair")).toList();

        pairs.forEach(GoldenNetworksTest::checkPair);

        assertTrue(pairs.size() >= 200, () -> "pairs=" + pairs.size());
    }

    private static void checkNetwork(List<String[]> lines) {
        Network network = new Network();
        int points =
                (int) lines.stream().filter(line -> line[0].equals("volts")).count();
        for (int point = 0; point < points; point++) {
            network.point();
        }
        double[] amps = new double[points];
        for (String[] line : lines) {
            switch (line[0]) {
                case "resistor" -> network.resistor(whole(line[1]), whole(line[2]), number(line[3]));
                case "tie" -> network.tie(whole(line[1]), number(line[2]), number(line[3]));
                case "current" -> amps[whole(line[1])] += number(line[2]);
                default -> assertTrue(line[0].equals("network") || line[0].equals("volts"), line[0]);
            }
        }
        double[] volts = network.factored().with(amps);
        lines.stream()
                .filter(line -> line[0].equals("volts"))
                .forEach(line -> assertNear(number(line[2]), volts[whole(line[1])], lines));
    }

    private static void checkPair(List<String[]> lines) {
        List<Span> spans = new ArrayList<>();
        List<Joint> joints = new ArrayList<>();
        List<Load> loads = new ArrayList<>();
        List<Terminator> terminators = new ArrayList<>();
        List<Bias> biases = new ArrayList<>();
        List<Double> grounds = new ArrayList<>();
        double ofController = 0;
        for (String[] line : lines) {
            int stop = line[0].equals("pair") ? 0 : whole(line[1]);
            switch (line[0]) {
                case "span" -> {
                    spans.add(new Span(stop, whole(line[2]), number(line[3])));
                    joints.add(new Joint(number(line[4]), number(line[5])));
                }
                case "load" -> {
                    loads.add(new Load(stop, number(line[2])));
                    grounds.add(0.0);
                }
                case "terminator" -> terminators.add(new Terminator(stop, number(line[2])));
                case "bias" -> biases.add(new Bias(stop, number(line[2]), number(line[3]), false));
                case "ground" -> {
                    if (stop == Cable.CONTROLLER) {
                        ofController = number(line[2]);
                    } else {
                        grounds.set(stop, number(line[2]));
                    }
                }
                default -> assertTrue(List.of("pair", "d1", "d0", "ohms").contains(line[0]), line[0]);
            }
        }
        Circuit circuit = new Circuit(spans, joints, loads, terminators, biases, number(lines.get(0)[2]));
        PairNetwork network = new PairNetwork(
                circuit, LoadModel.valueOf(lines.get(0)[1]), new GroundVolts(grounds, ofController, "drawn"));
        for (String[] line : lines) {
            switch (line[0]) {
                case "d1" -> assertNear(number(line[2]), network.restOfD1(whole(line[1])), lines);
                case "d0" -> assertNear(number(line[2]), network.restOfD0(whole(line[1])), lines);
                case "ohms" -> assertNear(number(line[2]), network.ohms(whole(line[1])), lines);
                default -> {
                    // a part, which the network is made of
                }
            }
        }
    }

    private static void assertNear(double expected, double actual, List<String[]> lines) {
        assertEquals(expected, actual, Math.max(ABSOLUTE, Math.abs(expected) * RELATIVE), () -> text(lines));
    }

    private static String text(List<String[]> lines) {
        return String.join(
                "\n", lines.stream().map(line -> String.join(" ", line)).toList());
    }

    private static int whole(String text) {
        return Integer.parseInt(text);
    }

    private static double number(String text) {
        return Double.parseDouble(text);
    }

    private static List<List<String[]>> groups() {
        List<List<String[]>> groups = new ArrayList<>();
        try (InputStream in = Objects.requireNonNull(GoldenNetworksTest.class.getResourceAsStream("networks.txt"));
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (line.startsWith("#")) {
                    continue;
                }
                String[] words = line.split(" ", -1);
                if (words[0].equals("network") || words[0].equals("pair")) {
                    groups.add(new ArrayList<>());
                }
                groups.get(groups.size() - 1).add(words);
            }
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return groups;
    }
}
