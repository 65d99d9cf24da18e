package dropline.scenarios.release;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The shell launcher in a source tree, with a Java and a Maven that only tell how they were called. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the shell launcher serves Linux and macOS")
final class LauncherTest {
    private static final String JAVA_17 = """
            #!/bin/sh
            if [ "$1" = -XshowSettings:properties ]; then
                echo "    java.home = $JAVA_HOME" >&2
                echo "    java.specification.version = 17" >&2
                exit 0
            fi
            for argument in "$@"; do echo "<$argument>"; done
            exit ${JAVA_ENDS_WITH:-0}
            """;
    private static final String MAVEN = """
            #!/bin/sh
            echo "$PWD" >>"$CALLS"
            echo "what Maven says"
            mkdir -p harness/target/app/lib
            exit ${MAVEN_ENDS_WITH:-0}
            """;

    @TempDir
    private Path temp;

    private Path tree;
    private Path javaHome;
    private Path calls;

    @BeforeEach
    void plant() throws IOException {
        tree = Files.createDirectories(temp.resolve("a source tree"));
        javaHome = temp.resolve("a jdk");
        calls = temp.resolve("calls");
        for (String module : List.of("protocol", "bus-sim", "harness")) {
            Files.createDirectories(tree.resolve(module).resolve("src/main"));
            Files.createFile(tree.resolve(module).resolve("pom.xml"));
            Files.createFile(tree.resolve(module).resolve("src/main/Source.java"));
        }
        Files.createFile(tree.resolve("pom.xml"));
        Files.createDirectory(tree.resolve(".mvn"));
        Files.copy(Path.of("../dropline"), tree.resolve("dropline"));
        script(javaHome.resolve("bin/java"), JAVA_17);
        script(javaHome.resolve("bin/javac"), "#!/bin/sh\n");
        script(temp.resolve("maven/mvn"), MAVEN);
    }

    @Test
    void firstStartBuildsInTheTreeAndTellsSoOnStandardError() throws Exception {
        Outcome outcome = launch("0");

        assertEquals(0, outcome.exitCode());
        assertEquals(List.of(tree.toRealPath().toString()), Files.readAllLines(calls));
        assertEquals("dropline: building for the first time, which may take a few minutes...\n", outcome.errors());
    }

    @Test
    void secondStartBuildsNothingAndSaysNothing() throws Exception {
        launch("0");

        Outcome second = launch("0");

        assertEquals(1, Files.readAllLines(calls).size());
        assertEquals("", second.errors());
    }

    @Test
    void changedSourceIsBuiltAgain() throws Exception {
        launch("0");
        Files.setLastModifiedTime(
                tree.resolve("bus-sim/src/main/Source.java"),
                FileTime.from(Instant.now().plusSeconds(60)));

        Outcome second = launch("0");

        assertEquals(2, Files.readAllLines(calls).size());
        assertEquals("dropline: sources have changed, building...\n", second.errors());
    }

    @Test
    void deletedSourceIsBuiltAgain() throws Exception {
        launch("0");
        Path stamp = tree.resolve("harness/target/built");
        Files.delete(tree.resolve("protocol/src/main/Source.java"));
        Files.setLastModifiedTime(stamp, FileTime.from(Instant.now().minusSeconds(60)));

        launch("0");

        assertEquals(2, Files.readAllLines(calls).size());
    }

    @Test
    void failedBuildShowsItsLogAndIsTriedAgain() throws Exception {
        Outcome first = launch("1");
        launch("0");

        assertEquals(3, first.exitCode());
        assertTrue(first.errors().contains("what Maven says"), first::errors);
        assertEquals("", first.output());
        assertEquals(2, Files.readAllLines(calls).size());
    }

    @Test
    void argumentsReachTheApplicationUnchanged() throws Exception {
        Outcome outcome = launch("0", "replay", "my pit.yaml", "", "a*b");

        assertTrue(
                outcome.output().endsWith("<dropline.harness.cli.Main>\n<replay>\n<my pit.yaml>\n<>\n<a*b>\n"),
                outcome::output);
        assertTrue(outcome.output().contains("<-Ddropline.home=" + tree.toRealPath() + ">\n"), outcome::output);
    }

    /** Java reads its classes from where Dropline has it write them. */
    @Test
    void javaAndTheApplicationAreToldOfOneArchiveOfClasses() throws Exception {
        Outcome outcome = launch("0");

        String archive = temp.resolve("caches/dropline/a source tree.jsa").toString();
        assertTrue(outcome.output().contains("<-XX:SharedArchiveFile=" + archive + ">\n"), outcome::output);
        assertTrue(outcome.output().contains("<-Ddropline.archive=" + archive + ">\n"), outcome::output);
    }

    @Test
    void linkToTheLauncherFindsItsTree() throws Exception {
        Path link = Files.createSymbolicLink(temp.resolve("link"), Path.of("a source tree/dropline"));

        Outcome outcome = start(link, "0", List.of("demo"));

        assertEquals(0, outcome.exitCode(), outcome::errors);
        assertTrue(outcome.output().contains("<-Ddropline.home=" + tree.toRealPath() + ">\n"), outcome::output);
    }

    @Test
    void runtimeWithoutCompilerIsToldToInstallTheJdk() throws Exception {
        Files.delete(javaHome.resolve("bin/javac"));

        Outcome outcome = launch("0");

        assertEquals(3, outcome.exitCode());
        assertTrue(outcome.errors().contains("Install the development kit (JDK), version 17"), outcome::errors);
        assertFalse(Files.exists(calls));
    }

    private Outcome launch(String mavenEndsWith, String... arguments) throws IOException, InterruptedException {
        return start(tree.resolve("dropline"), mavenEndsWith, List.of(arguments));
    }

    private Outcome start(Path launcher, String mavenEndsWith, List<String> arguments)
            throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder("sh", launcher.toString());
        builder.command().addAll(arguments);
        Path output = temp.resolve("output");
        Path errors = temp.resolve("errors");
        builder.directory(temp.toFile()).redirectOutput(output.toFile()).redirectError(errors.toFile());
        builder.environment().put("JAVA_HOME", javaHome.toString());
        builder.environment().put("CALLS", calls.toString());
        builder.environment().put("XDG_CACHE_HOME", temp.resolve("caches").toString());
        builder.environment().put("MAVEN_ENDS_WITH", mavenEndsWith);
        builder.environment().merge("PATH", temp.resolve("maven").toString(), (old, first) -> first + ":" + old);
        Process process = builder.start();
        if (!process.waitFor(1, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new AssertionError("not done after a minute: command=" + builder.command());
        }
        return new Outcome(process.exitValue(), Files.readString(output), Files.readString(errors));
    }

    private static void script(Path path, String text) throws IOException {
        Files.createDirectories(path.getParent());
        Files.writeString(path, text);
        if (!path.toFile().setExecutable(true)) {
            throw new IOException("cannot be made executable: " + path);
        }
    }

    private record Outcome(int exitCode, String output, String errors) {}
}
