package dropline.scenarios.peer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/**
 * A tool from the machine's own packages. Where it is missing the test is skipped and says so, unless
 * {@code -Ddropline.peers=required}.
 */
public record Peer(String command) {
    private static final long PATIENCE_SECONDS = 120;

    /** Skips the test, or fails it, if the tool is not on this machine. */
    public void mustBeHere() {
        String path = System.getenv("PATH");
        if (Path.of(command).isAbsolute() && Files.isExecutable(Path.of(command))) {
            return;
        }
        for (String folder : (path == null ? "" : path).split(File.pathSeparator)) {
            if (!folder.isEmpty() && Files.isExecutable(Path.of(folder, command))) {
                return;
            }
        }
        String missing = command + " is not installed, so nobody independent checks it here (Debian: apt-get install "
                + command + ")";
        if ("required".equals(System.getProperty("dropline.peers"))) {
            fail(missing);
        }
        Assumptions.abort(missing);
    }

    /** Whether it ends well. */
    public boolean runs(Path folder, String... arguments) throws IOException, InterruptedException {
        List<String> line = new ArrayList<>(List.of(command));
        line.addAll(List.of(arguments));
        Process process = new ProcessBuilder(line)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .directory(folder.toFile())
                .start();
        try {
            return process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS) && process.exitValue() == 0;
        } finally {
            process.destroyForcibly();
        }
    }

    /** Its lines, once it has ended well. */
    public List<String> says(Path folder, String... arguments) throws IOException, InterruptedException {
        List<String> line = new ArrayList<>(List.of(command));
        line.addAll(List.of(arguments));
        Path out = Files.createTempFile(folder, "out", ".txt");
        Path err = Files.createTempFile(folder, "err", ".txt");
        ProcessBuilder builder =
                new ProcessBuilder(line).redirectOutput(out.toFile()).redirectError(err.toFile());
        builder.environment().put("HOME", folder.toString());
        Process process = builder.start();
        try {
            if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                fail(command + " did not end");
            }
        } finally {
            process.destroyForcibly();
        }
        assertEquals(0, process.exitValue(), () -> line + ": " + text(err));
        return text(out).lines().toList();
    }

    private static String text(Path file) {
        try {
            return Files.readString(file, StandardCharsets.UTF_8);
        } catch (IOException unread) {
            throw new AssertionError(unread);
        }
    }
}
