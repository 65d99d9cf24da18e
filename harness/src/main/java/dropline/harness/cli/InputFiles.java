package dropline.harness.cli;

import java.nio.file.Files;
import java.nio.file.Path;

/** Looks at files before work begins. */
final class InputFiles {
    private InputFiles() {}

    /** Says so if there is no such file, or if it cannot be read. */
    static void mustExist(Path file, String what) {
        if (Files.isDirectory(file)) {
            throw new WrongInput("dropline: " + file + " is a folder; the name of a " + what + " is needed");
        }
        if (!Files.exists(file)) {
            throw new WrongInput("dropline: there is no " + what + " at " + file);
        }
        if (!Files.isReadable(file)) {
            throw new WrongInput("dropline: " + file + " cannot be read; look at its permissions");
        }
    }
}
