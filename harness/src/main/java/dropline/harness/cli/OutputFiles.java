package dropline.harness.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;
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

    /** Writes a file whole or not at all: what was there stays until all of the new text is on the disk. */
    static void write(Path file, String text) throws IOException {
        Path target = Files.isSymbolicLink(file) ? file.toRealPath() : file;
        if (Files.exists(target) && !Files.isRegularFile(target)) {
            Files.writeString(target, text, StandardCharsets.UTF_8);
            return;
        }
        Path folder = target.toAbsolutePath().getParent();
        Path whole = Files.createTempFile(folder, "." + target.getFileName(), ".part");
        try {
            Files.writeString(whole, text, StandardCharsets.UTF_8);
            readableByOthers(whole);
            Files.move(whole, target, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(whole);
        }
    }

    /** A temporary file is its owner's alone; one that was asked for is not. */
    private static void readableByOthers(Path file) throws IOException {
        PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        if (view != null) {
            view.setPermissions(PosixFilePermissions.fromString("rw-r--r--"));
        }
    }
}
