package dropline.harness.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.host.StateBlock;
import dropline.harness.layout.LayoutFile;
import dropline.harness.pitfile.PitFile;
import dropline.harness.problem.ProblemChapter;
import dropline.harness.recording.PitFeed;
import dropline.harness.recording.ReadOptions;
import dropline.harness.recording.RecordingException;
import dropline.harness.recording.RecordingFiles;
import dropline.harness.replay.Source;
import dropline.harness.suite.SuiteFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whatever stands in a file, reading it ends with what it says or with problems, and never with anything else.
 * {@code -Ddropline.fuzz-cases=20000} tries so many of each of the five kinds; the nightly profile does. For the memory
 * it takes: {@code -Xmx256m}.
 */
final class SpoiltFilesTest {
    private static final int CASES = Integer.getInteger("dropline.fuzz-cases", 300);
    private static final long SEED = 20_261_127L;
    private static final Path SCENARIOS = ProblemChapter.docs().resolveSibling("scenarios");

    @TempDir
    private Path folder;

    /** Reads a file; says whether it was understood. */
    @FunctionalInterface
    private interface Reading {
        boolean read(Path file) throws IOException;
    }

    private void tryAll(String name, List<Path> sound, Reading reading) throws IOException {
        Spoiler spoiler = new Spoiler(SEED);
        List<String> texts = new ArrayList<>();
        for (Path file : sound) {
            texts.add(Files.readString(file));
        }
        int understood = 0;
        for (int i = 0; i < CASES; i++) {
            Path file = Files.write(folder.resolve(name), spoiler.spoiltBytes(texts.get(i % texts.size())));
            try {
                understood += reading.read(file) ? 1 : 0;
            } catch (RuntimeException | Error broken) {
                Path kept = Files.copy(
                        file, Files.createTempFile("spoilt", name), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
                throw new AssertionError("case " + i + ", kept as " + kept, broken);
            }
        }
        int fine = understood;
        assertTrue(fine < CASES, () -> "some must be wrong: understood=" + fine);
    }

    private static List<Path> in(String under, String ending) throws IOException {
        try (Stream<Path> files = Files.walk(SCENARIOS.resolve(under))) {
            return files.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .toList();
        }
    }

    @Test
    @Timeout(3600)
    void spoiltPitsArePitsOrProblems() throws IOException {
        List<Path> sound = new ArrayList<>(in("cases", "pit.yaml"));
        sound.addAll(in("cases", "before.yaml"));
        sound.add(SCENARIOS.resolve("demo/pit.yaml"));
        for (String part : List.of("signals.yaml", "boards.yaml", "wired.yaml")) {
            Files.copy(SCENARIOS.resolve("cases").resolve(part), folder.resolve(part));
        }

        tryAll("pit.yaml", sound, file -> PitFile.read(file) instanceof PitFile.Understood);
    }

    @Test
    @Timeout(3600)
    void spoiltSuitesAreSuitesOrProblems() throws IOException {
        Path pit = SmallPit.write(folder, "150 ms");
        Path flight = SmallPit.recording(folder);
        Path sound = Files.writeString(folder.resolve("sound.yaml"), """
                suite: Small
                pit: %s
                holds: {known: 500 ms, cycle: 50 ms}
                live: {ask: {roll-call: bus, port: COM7}, new: {bench: changed, tcp: "127.0.0.1:9"}}
                runs:
                  first: {recording: %s, from: 1 s, to: 3 s, seeds: [1, 2]}
                  silent: {recording: %s, faults: ["dead-node 'node 1' at 1s for 1s"], holds: {recovery: 1 s}}
                  each: {for: 5 s, in-turn: reset at 1s}
                """.formatted(
                        pit.getFileName(), flight.getFileName(), flight.getFileName()));

        tryAll("suite.yaml", List.of(sound), file -> SuiteFile.read(file) instanceof SuiteFile.Understood);
    }

    @Test
    @Timeout(3600)
    void spoiltProtocolsAreProtocolsOrProblems() throws IOException {
        List<Path> sound = List.of(
                SCENARIOS.resolve("layouts/counted.yaml"),
                SCENARIOS.resolve("layouts/gaps.yaml"),
                SCENARIOS.resolve("layouts/lines.yaml"));

        tryAll("layout.yaml", sound, file -> LayoutFile.read(file) instanceof LayoutFile.Understood);
    }

    @Test
    @Timeout(3600)
    void spoiltRecordingsArePlayedOrRefused() throws IOException {
        if (!(PitFile.read(SmallPit.write(folder, "150 ms")) instanceof PitFile.Understood pit)) {
            throw new AssertionError("the pit must be right");
        }
        Path flight = SmallPit.recording(folder);
        Path lines = folder.resolve("sound.jsonl");
        Captured made = Captured.run("convert", flight.toString(), lines.toString());
        assertTrue(made.exitCode() == 0, made::toString);
        for (Path sound : List.of(flight, lines)) {
            String ending = sound.toString()
                    .substring(sound.toString().lastIndexOf('.'))
                    .toLowerCase(Locale.ROOT);
            tryAll("recording" + ending, List.of(sound), file -> isPlayed(file, pit));
        }
    }

    private static boolean isPlayed(Path file, PitFile.Understood pit) throws IOException {
        try (Source source =
                Source.recording(RecordingFiles.of(file), pit.pit(), ReadOptions.strict(), 0, PitFeed.TO_THE_END)) {
            StateBlock block = new StateBlock();
            long until = 0;
            int stretches = 0;
            do {
                until += 1_000_000_000L;
                stretches++;
            } while (source.feed().fill(block, until) && stretches < 1_000);
            return true;
        } catch (RecordingException refused) {
            return false;
        }
    }
}
