package dropline.scenarios.release;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@TestInstance(TestInstance.Lifecycle.PER_CLASS)
final class ReleaseZipIT {
    /** What the launcher for Linux and macOS may call besides Java. */
    private static final List<String> SHELL_TOOLS =
            List.of("sh", "dirname", "readlink", "sed", "uname", "basename", "cat");

    private Path temp = Path.of("");
    private Path path = Path.of("");

    @SuppressWarnings("NullAway.Init")
    private UnpackedRelease release;

    @BeforeAll
    void unpack(@TempDir Path folderOfAllTests) throws IOException {
        temp = folderOfAllTests;
        Path folder = Files.createDirectories(temp.resolve("a folder with spaces"));
        release = UnpackedRelease.into(folder);
        path = Files.createDirectories(temp.resolve("only java"));
        Files.writeString(temp.resolve("no folder"), "");
        if (!UnpackedRelease.windows()) {
            Path javaHome = Path.of(System.getProperty("java.home"));
            Files.createSymbolicLink(path.resolve("java"), javaHome.resolve("bin/java"));
            for (String tool : SHELL_TOOLS) {
                for (String bin : List.of("/bin/", "/usr/bin/")) {
                    Path there = Path.of(bin + tool);
                    if (Files.exists(there) && !Files.exists(path.resolve(tool))) {
                        Files.createSymbolicLink(path.resolve(tool), there);
                    }
                }
            }
        }
    }

    @Test
    void zipHoldsTheLaunchersTheDemoTheReferenceBusesAndTheLicence() throws IOException {
        List<String> files = release.files();

        assertTrue(
                files.containsAll(List.of(
                        "LICENSE",
                        "README.md",
                        "dropline",
                        "dropline.cmd",
                        "java.options",
                        "scenarios/cases/unplugged-panel/suite.yaml",
                        "scenarios/demo/flight.dlr",
                        "scenarios/demo/pit.yaml",
                        "scenarios/reference/bus-with-state.yaml",
                        "scenarios/reference/bus.yaml")),
                () -> "files=" + files);
    }

    @Test
    void zipHoldsNoTestLibrary() throws IOException {
        List<String> files = release.files();

        assertFalse(files.stream().anyMatch(file -> file.contains("junit") || file.contains("archunit")));
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "Windows has no executable bit")
    void shellLauncherCarriesItsExecutableBit() {
        assertTrue(Files.isExecutable(release.root().resolve("dropline")));
    }

    @Test
    void windowsLauncherHasWindowsLineEnds() throws IOException {
        String text = Files.readString(release.root().resolve("dropline.cmd"));

        assertEquals(text.lines().count(), text.split("\r\n", -1).length - 1);
    }

    @Test
    void demoRunsWithOnlyJavaAtHandAndWritesItsReport() throws IOException, InterruptedException {
        Path current = Files.createDirectories(temp.resolve("where the user stands"));

        Outcome outcome = run(current, "demo");

        assertEquals(0, outcome.exitCode(), outcome::everythingSaid);
        assertFalse(outcome.output().isBlank());
        assertTrue(reports(current) > 0, () -> "no report was written\n" + outcome.everythingSaid());
    }

    @Test
    void aPitThatIsNotThereIsWrongInput() throws IOException, InterruptedException {
        Path current = Files.createDirectories(temp.resolve("an empty place"));

        Outcome outcome = run(current, "describe", "no such pit.yaml");

        assertEquals(2, outcome.exitCode(), outcome::everythingSaid);
        assertTrue(outcome.everythingSaid().contains("no such pit.yaml"), outcome::everythingSaid);
    }

    /**
     * The first start has Java write an archive of its classes beside the run; from then on they are read from it. Java
     * 17 cannot do that below a folder with a space in its name.
     */
    @Test
    void classesAreArchivedOnceAndReadFromThereWhileTheyFit() throws IOException, InterruptedException {
        UnpackedRelease plain = UnpackedRelease.into(Files.createDirectories(temp.resolve("plain")));
        Map<String, String> keeping = caches("of plain");
        Path archive = temp.resolve("of plain")
                .resolve(UnpackedRelease.windows() ? "Dropline" : "dropline")
                .resolve(plain.root().getFileName() + ".jsa");
        Path log = temp.resolve("classes.txt");

        Outcome first = run(plain, keeping, "--version");
        await().atMost(2, TimeUnit.MINUTES).until(() -> Files.exists(archive));
        FileTime written = Files.getLastModifiedTime(archive);
        Map<String, String> telling = new HashMap<>(keeping);
        telling.put("JDK_JAVA_OPTIONS", "-Xlog:class+load:file=" + log);
        Outcome second = run(plain, telling, "describe", "nothing");

        assertTrue(
                Files.readString(log).contains("dropline.harness.cli.CommandLines source: shared objects file (top)"),
                () -> "not from the archive: " + log);
        assertEquals(2, second.exitCode(), second::everythingSaid);
        assertEquals(written, Files.getLastModifiedTime(archive));

        Files.delete(archive);
        Files.writeString(archive, "no archive at all");
        assertEquals(first, run(plain, keeping, "--version"));
        assertEquals(0, first.exitCode(), first::everythingSaid);
        assertEquals("", first.errors());
    }

    /** Tells the launchers where to keep what they may lose. */
    private Map<String, String> caches(String folder) {
        String path = temp.resolve(folder).toString();
        return Map.of("XDG_CACHE_HOME", path, "LocalAppData", path);
    }

    private long reports(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(".html"))
                    .filter(file -> file.toFile().length() > 0)
                    .count();
        }
    }

    private Outcome run(Path current, String... arguments) throws IOException, InterruptedException {
        // a folder that is a file: nothing is written there, and nothing amiss
        return run(release, caches("no folder"), current, arguments);
    }

    private Outcome run(UnpackedRelease started, Map<String, String> environment, String... arguments)
            throws IOException, InterruptedException {
        return run(started, environment, temp, arguments);
    }

    private Outcome run(UnpackedRelease started, Map<String, String> environment, Path current, String... arguments)
            throws IOException, InterruptedException {
        Path output = Files.createTempFile(temp, "output", ".txt");
        Path errors = Files.createTempFile(temp, "errors", ".txt");
        ProcessBuilder builder = new ProcessBuilder(started.command(arguments));
        builder.directory(current.toFile());
        builder.redirectOutput(output.toFile()).redirectError(errors.toFile());
        builder.environment().remove("JAVA_HOME");
        builder.environment().put("PATH", searchPath());
        builder.environment().putAll(environment);
        Process process = builder.start();
        if (!process.waitFor(5, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new AssertionError("not done after 5 minutes: command=" + builder.command());
        }
        return new Outcome(
                process.exitValue(),
                Files.readString(output, StandardCharsets.UTF_8),
                Files.readString(errors, StandardCharsets.UTF_8));
    }

    private String searchPath() {
        if (!UnpackedRelease.windows()) {
            return path.toString();
        }
        return Path.of(System.getProperty("java.home"), "bin") + File.pathSeparator + System.getenv("SystemRoot")
                + "\\System32";
    }

    private record Outcome(int exitCode, String output, String errors) {
        String everythingSaid() {
            return "exit code " + exitCode + "\n" + output + "\n" + errors;
        }
    }
}
