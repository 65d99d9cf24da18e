package dropline.scenarios.bench;

import dropline.scenarios.pieces.Pieces;
import dropline.scenarios.yardstick.Yardstick;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.openjdk.jmh.runner.RunnerException;

/**
 * Measures a live stream, the demo pit for an hour and for ten minutes, the reference bus, sizing, starting, emulated
 * boards, the yardstick and the pieces; prints all of it.
 */
public final class Benchmarks {
    private static final long SECOND = 1_000_000_000L;
    private static final int RUNS = 3;

    /** Two frames in every 544 us: the mean request, reply gap, reply and controller gap of the reference bus. */
    private static final double REFERENCE_FRAMES_PER_SECOND = 2 / 544e-6;

    private final Path home;
    private final Path folder;
    private final String only;
    private final PrintStream out;

    private Benchmarks(Path home, Path folder, String only, PrintStream out) {
        this.home = home;
        this.only = only;
        this.folder = folder;
        this.out = out;
    }

    /**
     * Takes the project's root folder and, for one part alone, {@code record}, {@code replay}, {@code size},
     * {@code start}, {@code firmware}, {@code yardstick} or {@code pieces}.
     */
    public static void main(String[] arguments) throws IOException, InterruptedException, RunnerException {
        Path folder = Files.createTempDirectory("dropline-bench");
        try {
            Path home = Path.of(arguments[0]).toAbsolutePath().normalize();
            new Benchmarks(home, folder, arguments.length > 1 ? arguments[1] : "", System.out).run();
        } finally {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        }
    }

    private boolean isWanted(String part) {
        return only.isEmpty() || only.equals(part);
    }

    private void run() throws IOException, InterruptedException, RunnerException {
        out.printf(
                Locale.ROOT,
                "Java %s, %s, %d processors%n",
                System.getProperty("java.version"),
                System.getProperty("os.arch"),
                Runtime.getRuntime().availableProcessors());
        if (isWanted("record")) {
            LiveStream.measure(folder, home, out);
        }
        if (isWanted("replay")) {
            replays();
        }
        if (isWanted("size")) {
            size();
        }
        if (isWanted("start")) {
            Starts.measure(folder, home, out);
        }
        if (isWanted("firmware")) {
            FirmwareSpeed.measure(home, out);
        }
        if (isWanted("yardstick")) {
            Yardstick.compare(home, out);
        }
        if (isWanted("pieces")) {
            Pieces.run(home.toString());
        }
    }

    /** One segment of the demo, six baud rates, 20 seeds. */
    private void size() throws IOException, InterruptedException {
        Path demo = home.resolve("scenarios/demo");
        List<String> command =
                new ArrayList<>(List.of("size", demo.resolve("pit.yaml").toString()));
        command.add(demo.resolve("flight.dlr").toString());
        command.addAll(List.of("--segment", "front", "--seeds", "20"));
        command.addAll(List.of("--baud", "57600,115200,250000,500000,1000000,2000000"));
        best("size of the demo's front segment, six baud rates, 20 seeds", command);
    }

    /** All with start-up, on two processors. */
    private void replays() throws IOException, InterruptedException {
        demo(600);
        demo(3_600);
        demo(36_000);
        large();
        long shortWall = reference(3_600);
        long longWall = reference(36_000);
        out.printf(
                Locale.ROOT,
                "reference bus, start-up taken out: %.1f ns a frame%n",
                (longWall - shortWall) / (32_400 * REFERENCE_FRAMES_PER_SECOND));
    }

    private void demo(long seconds) throws IOException, InterruptedException {
        Path demo = home.resolve("scenarios/demo");
        Path recording = folder.resolve("flight-" + seconds + ".dlr");
        long length = LongFlight.write(demo.resolve("flight.dlr"), recording, seconds * SECOND);
        List<String> command = List.of("replay", demo.resolve("pit.yaml").toString(), recording.toString());
        best(String.format(Locale.ROOT, "demo pit, %d s of flight", length / SECOND), command);
    }

    private void large() throws IOException, InterruptedException {
        Path pit = folder.resolve("large.yaml");
        LargePit.write(pit);
        best("150 panels on six segments, an hour", List.of("replay", pit.toString(), "--for", "3600s"));
    }

    private long reference(long seconds) throws IOException, InterruptedException {
        Path pit = home.resolve("scenarios/reference/bus.yaml");
        return best(
                String.format(Locale.ROOT, "reference bus, %d s", seconds),
                List.of("replay", pit.toString(), "--for", seconds + "s"));
    }

    private long best(String what, List<String> command) throws IOException, InterruptedException {
        long best = Long.MAX_VALUE;
        long worst = 0;
        long heap = 0;
        for (int i = 0; i < RUNS; i++) {
            MeasuredRun run = MeasuredRun.of(folder, home, command);
            best = Math.min(best, run.wallNanos());
            worst = Math.max(worst, run.wallNanos());
            heap = Math.max(heap, run.heapMebibytes());
        }
        out.printf(
                Locale.ROOT,
                "%s: %.2f to %.2f s of wall time in %d runs; at most %d MiB of heap in use after a collection%n",
                what,
                best / 1e9,
                worst / 1e9,
                RUNS,
                heap);
        return best;
    }
}
