package dropline.scenarios.release;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;

/** The release zip, unpacked somewhere; the folder's permissions are the zip's own. */
final class UnpackedRelease {
    private static final Map<String, Object> WITH_PERMISSIONS = Map.of("enablePosixFileAttributes", true);

    private final Path root;

    private UnpackedRelease(Path root) {
        this.root = root;
    }

    /** Unpacks the zip named by the system property {@code release.zip} into {@code folder}. */
    static UnpackedRelease into(Path folder) throws IOException {
        Path zip = Path.of(Objects.requireNonNull(System.getProperty("release.zip"), "release.zip is not set"));
        try (FileSystem inside = FileSystems.newFileSystem(zip, posix(folder) ? WITH_PERMISSIONS : Map.of())) {
            Path top = inside.getPath("/");
            try (Stream<Path> entries = Files.walk(top)) {
                entries.forEach(entry ->
                        copy(entry, folder.resolve(top.relativize(entry).toString())));
            }
        }
        try (Stream<Path> tops = Files.list(folder)) {
            List<Path> found = tops.toList();
            if (found.size() != 1) {
                throw new AssertionError("the zip must hold one folder: found=" + found);
            }
            return new UnpackedRelease(found.get(0));
        }
    }

    Path root() {
        return root;
    }

    /** The paths of all files, relative to the release's folder, with forward slashes, sorted. */
    List<String> files() throws IOException {
        try (Stream<Path> paths = Files.walk(root)) {
            return paths.filter(Files::isRegularFile)
                    .map(path -> root.relativize(path).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        }
    }

    /** A command that starts the launcher of the machine the test runs on. */
    List<String> command(String... arguments) {
        List<String> command = new ArrayList<>();
        if (windows()) {
            command.addAll(List.of("cmd.exe", "/c", root.resolve("dropline.cmd").toString()));
        } else {
            command.add(root.resolve("dropline").toString());
        }
        command.addAll(List.of(arguments));
        return command;
    }

    static boolean windows() {
        return System.getProperty("os.name").startsWith("Windows");
    }

    static boolean posix(Path path) {
        return path.getFileSystem().supportedFileAttributeViews().contains("posix");
    }

    private static void copy(Path from, Path to) {
        try {
            if (Files.isDirectory(from)) {
                Files.createDirectories(to);
            } else {
                Files.copy(from, to);
                if (posix(to)) {
                    Files.setPosixFilePermissions(to, Files.getPosixFilePermissions(from));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
