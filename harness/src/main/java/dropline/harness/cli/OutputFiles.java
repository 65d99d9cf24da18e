package dropline.harness.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Looks at where results shall go before work begins, and writes them when it is done. */
final class OutputFiles {
    private OutputFiles() {}

    /** Says so if a file cannot be written there. */
    static void mustBeWritable(@Nullable Path file, Path... inputs) throws IOException {
        if (file == null) {
            return;
        }
        Path folder = file.toAbsolutePath().getParent();
        if (Files.isDirectory(file) || folder == null) {
            throw new WrongInput("dropline: " + file + " is a folder; the name of a file to write is needed");
        }
        if (!Files.isDirectory(folder)) {
            throw new WrongInput("dropline: cannot write " + file + ": there is no folder " + folder);
        }
        if (!Files.isWritable(Files.exists(file) ? file : folder)) {
            throw new WrongInput("dropline: cannot write " + file + "; look at its permissions");
        }
        for (Path input : inputs) {
            if (Files.exists(file) && Files.exists(input) && Files.isSameFile(file, input)) {
                throw new WrongInput("dropline: " + file + " is also read; give what is written another name");
            }
        }
    }

    static void write(Path file, String text) throws IOException {
        Files.writeString(file, text, StandardCharsets.UTF_8);
    }
}
