package dropline.scenarios.yardstick;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Runs the three models of the reference bus in turn, each in a Java of its own on one processor, several rounds;
 * prints how many frames each simulates in a second once warm, and how they compare. Fails where their figures differ.
 */
public final class Yardstick {
    private static final int ROUNDS = 7;
    private static final long SEED = 1;
    private static final long WARM_UP_SECONDS = 3_600;
    private static final long SECONDS = 7_200;
    private static final double AGREEMENT = 0.005;

    private static final Path PIT = Path.of("scenarios/reference/bus-with-state.yaml");

    private enum Kind {
        SIMULATOR("Dropline, all measures and the digest"),
        LIBRARY("SSJ 3.3.1, reused events"),
        STRAIGHT("straight line, no queue");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        Model model(Path home) {
            return switch (this) {
                case SIMULATOR -> new PublicSimulator(home.resolve(PIT), SEED);
                case LIBRARY -> new EventLibrary(SEED);
                case STRAIGHT -> new StraightLine(SEED);
            };
        }
    }

    /** One timed run. */
    private record Timed(Result result, double framesPerSecond) {}

    private Yardstick() {}

    /** Runs one model in this Java: takes the project's root folder and the model's name. */
    public static void main(String[] arguments) {
        Path home = Path.of(arguments[0]).toAbsolutePath().normalize();
        runHere(Kind.valueOf(arguments[1]).model(home), System.out);
    }

    private static void runHere(Model model, PrintStream out) {
        Result warm = model.run(WARM_UP_SECONDS);
        long start = System.nanoTime();
        Result result = model.run(SECONDS);
        long took = System.nanoTime() - start;
        if (warm.frames() == 0) {
            throw new IllegalStateException("nothing was simulated");
        }
        out.printf(
                Locale.ROOT,
                "RESULT %d %.3f %.3f %.3f %d%n",
                result.frames(),
                result.latencyMeanNanos(),
                result.latency99Nanos(),
                result.cycleMeanNanos(),
                took);
    }

    /**
     * Compares all three.
     *
     * @param home the project's root folder
     */
    public static void compare(Path home, PrintStream out) throws IOException, InterruptedException {
        List<List<Timed>> runs = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            runs.add(new ArrayList<>());
            out.println(kind.name().toLowerCase(Locale.ROOT) + ": " + kind.words);
        }
        out.printf(
                Locale.ROOT,
                "%d rounds of %d s of the reference bus with state, after %d s to warm up; a Java each, one core%n",
                ROUNDS,
                SECONDS,
                WARM_UP_SECONDS);
        for (int round = 0; round < ROUNDS; round++) {
            for (Kind kind : Kind.values()) {
                runs.get(kind.ordinal()).add(runApart(home, kind));
            }
        }
        mustAgree(runs);
        double[] medians = new double[runs.size()];
        for (Kind kind : Kind.values()) {
            double[] speeds = runs.get(kind.ordinal()).stream()
                    .mapToDouble(Timed::framesPerSecond)
                    .sorted()
                    .toArray();
            medians[kind.ordinal()] = speeds[speeds.length / 2];
            out.printf(
                    Locale.ROOT,
                    "%-10s %6.2f million frames a second (%.2f to %.2f), %6.1f ns a frame; latency mean %.1f us,"
                            + " 99 of 100 %.1f us, poll cycle mean %.1f us%n",
                    kind.name().toLowerCase(Locale.ROOT),
                    medians[kind.ordinal()] / 1e6,
                    speeds[0] / 1e6,
                    speeds[speeds.length - 1] / 1e6,
                    1e9 / medians[kind.ordinal()],
                    runs.get(kind.ordinal()).get(0).result().latencyMeanNanos() / 1e3,
                    runs.get(kind.ordinal()).get(0).result().latency99Nanos() / 1e3,
                    runs.get(kind.ordinal()).get(0).result().cycleMeanNanos() / 1e3);
        }
        out.printf(
                Locale.ROOT,
                "Dropline's speed is %.2f of the library's and %.3f of the straight line's%n",
                medians[Kind.SIMULATOR.ordinal()] / medians[Kind.LIBRARY.ordinal()],
                medians[Kind.SIMULATOR.ordinal()] / medians[Kind.STRAIGHT.ordinal()]);
    }

    private static void mustAgree(List<List<Timed>> runs) {
        Result ours = runs.get(0).get(0).result();
        for (List<Timed> model : runs) {
            for (Timed run : model) {
                if (!ours.agrees(run.result(), AGREEMENT)) {
                    throw new IllegalStateException("the models must agree: " + ours + " and " + run.result());
                }
            }
        }
    }

    private static Timed runApart(Path home, Kind kind) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        if (kind == Kind.SIMULATOR) {
            command.add("@" + home.resolve("java.options"));
        } else {
            command.add("-XX:+UseSerialGC");
        }
        command.addAll(List.of(
                "-Xmx512m",
                "-XX:ActiveProcessorCount=1",
                "-cp",
                System.getProperty("java.class.path"),
                Yardstick.class.getName(),
                home.toString(),
                kind.name()));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        int exit = process.waitFor();
        String[] words = output.lines()
                .filter(line -> line.startsWith("RESULT "))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("a model must run: exit=" + exit + "\n" + output))
                .split(" ");
        double[] numbers =
                Arrays.stream(words).skip(1).mapToDouble(Double::parseDouble).toArray();
        Result result = new Result((long) numbers[0], numbers[1], numbers[2], numbers[3]);
        return new Timed(result, numbers[0] / numbers[4] * 1e9);
    }
}
