package dropline.scenarios.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One run of the application in a Java of its own: two processors, 256 MiB of heap.
 *
 * @param wallNanos from the start of the process to its end, start-up included
 * @param heapMebibytes the most that was in use right after a collection of new objects
 */
record MeasuredRun(long wallNanos, long heapMebibytes) {
    /** A small room for new objects, or a run would end before its first collection and tell nothing of its heap. */
    private static final String YOUNG = "-Xmn4m";

    private static final Pattern COLLECTION = Pattern.compile("\\d+M->(\\d+)M\\(");

    static MeasuredRun of(Path folder, Path home, List<String> arguments) throws IOException, InterruptedException {
        Path log = folder.resolve("collections.log");
        Path output = folder.resolve("output.txt");
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "@" + home.resolve("java.options"),
                "-Xmx256m",
                YOUNG,
                "-XX:ActiveProcessorCount=2",
                "-Xlog:gc:file=" + log.getFileName(),
                "-Ddropline.home=" + home,
                "-cp",
                home.resolve("harness/target/app/lib") + "/*",
                "dropline.harness.cli.Main"));
        command.addAll(arguments);
        long start = System.nanoTime();
        int exit = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start()
                .waitFor();
        long wall = System.nanoTime() - start;
        if (exit > 1) {
            throw new IllegalStateException(
                    "a run must end with 0 or 1: exit=" + exit + "\n" + Files.readString(output));
        }
        return new MeasuredRun(wall, mostAfterCollection(log));
    }

    private static long mostAfterCollection(Path log) throws IOException {
        long most = 0;
        for (String line : Files.readAllLines(log)) {
            Matcher matcher = COLLECTION.matcher(line);
            if (matcher.find()) {
                most = Math.max(most, Long.parseLong(matcher.group(1)));
            }
        }
        return most;
    }
}
