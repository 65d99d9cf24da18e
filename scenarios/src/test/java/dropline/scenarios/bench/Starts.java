package dropline.scenarios.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;

/**
 * How long a command takes to start, with and without an archive of classes, beside a Java program that does nothing;
 * and how long ten minutes of flight take in all.
 */
final class Starts {
    private static final int RUNS = 11;
    private static final int FLIGHT_SECONDS = 600;
    private static final long SECOND = 1_000_000_000L;
    private static final long LONGEST_WAIT_NANOS = 60 * SECOND;
    private static final long LOOK_NANOS = 50_000_000;

    private final Path folder;
    private final Path home;
    private final Path archive;
    private final PrintStream out;

    private Starts(Path folder, Path home, PrintStream out) {
        this.folder = folder;
        this.home = home;
        this.out = out;
        archive = folder.resolve("classes.jsa");
    }

    static void measure(Path folder, Path home, PrintStream out) throws IOException, InterruptedException {
        new Starts(folder, home, out).measure();
    }

    private void measure() throws IOException, InterruptedException {
        Path flight = folder.resolve("ten-minutes.dlr");
        LongFlight.write(home.resolve("scenarios/demo/flight.dlr"), flight, FLIGHT_SECONDS * SECOND);
        List<String> version = List.of("--version");
        List<String> replay =
                List.of("replay", home.resolve("scenarios/demo/pit.yaml").toString(), flight.toString());
        median("a Java program that does nothing", List.of("-cp", tests(), Nothing.class.getName()));
        median("dropline --version, no archive of classes", dropline(version));
        median("dropline replay of 10 minutes, no archive", dropline(replay));
        writeArchive();
        median("dropline --version, with the archive", dropline(version));
        median("dropline replay of 10 minutes, with the archive", dropline(replay));
    }

    private static String tests() {
        try {
            return Path.of(Nothing.class
                            .getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (URISyntaxException impossible) {
            throw new AssertionError(impossible);
        }
    }

    private List<String> dropline(List<String> arguments) {
        List<String> command = new ArrayList<>(List.of(
                "@" + home.resolve("java.options"),
                "-XX:SharedArchiveFile=" + archive,
                "-Ddropline.home=" + home,
                "-cp",
                home.resolve("harness/target/app/lib") + "/*",
                "dropline.harness.cli.Main"));
        command.addAll(arguments);
        return command;
    }

    private void writeArchive() throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(dropline(List.of("--version")));
        command.add(0, "-Ddropline.archive=" + archive);
        start(command);
        long until = System.nanoTime() + LONGEST_WAIT_NANOS;
        while (!Files.exists(archive)) {
            if (System.nanoTime() > until) {
                throw new IllegalStateException("an archive must be written: archive=" + archive);
            }
            LockSupport.parkNanos(LOOK_NANOS);
        }
    }

    private void median(String what, List<String> arguments) throws IOException, InterruptedException {
        long[] times = new long[RUNS];
        for (int run = 0; run < RUNS; run++) {
            long begin = System.nanoTime();
            start(arguments);
            times[run] = System.nanoTime() - begin;
        }
        Arrays.sort(times);
        out.printf(
                Locale.ROOT,
                "%s: %.2f s (%.2f to %.2f s in %d runs)%n",
                what,
                times[RUNS / 2] / 1e9,
                times[0] / 1e9,
                times[RUNS - 1] / 1e9,
                RUNS);
    }

    private void start(List<String> arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(arguments);
        command.add(0, Path.of(System.getProperty("java.home"), "bin", "java").toString());
        new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("output.txt").toFile())
                .start()
                .waitFor();
    }
}
