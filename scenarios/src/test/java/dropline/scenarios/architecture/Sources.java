package dropline.scenarios.architecture;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The project's own text files, found from the module the tests run in. */
final class Sources {
    private static final List<String> MODULES = List.of("protocol", "bus-sim", "harness", "scenarios");
    private static final List<String> TEXT_ENDS = List.of(
            ".java", ".jte", ".md", ".xml", ".yaml", ".yml", ".txt", ".cmd", ".config", ".properties", ".json", ".csv");
    private static final Path ROOT = Path.of("..").toAbsolutePath().normalize();

    private Sources() {}

    /** All Java files of all modules; {@code part} is {@code main} or {@code test}. */
    static List<Path> java(String part) {
        return MODULES.stream()
                .map(module -> ROOT.resolve(module).resolve("src").resolve(part).resolve("java"))
                .filter(Files::isDirectory)
                .flatMap(folder -> under(folder).stream())
                .filter(path -> path.toString().endsWith(".java"))
                .toList();
    }

    /** Every text file a reader of the project meets: sources, documents, build files, launchers. */
    static List<Path> texts() {
        return under(ROOT).stream().filter(Sources::isText).toList();
    }

    static String name(Path path) {
        return ROOT.relativize(path).toString().replace('\\', '/');
    }

    static List<String> lines(Path path) {
        try {
            return Files.readAllLines(path);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean isText(Path path) {
        String name = path.getFileName().toString().toLowerCase(Locale.ROOT);
        return !name.contains(".") || TEXT_ENDS.stream().anyMatch(name::endsWith);
    }

    private static List<Path> under(Path folder) {
        try (Stream<Path> paths = Files.walk(folder)) {
            return paths.filter(Files::isRegularFile)
                    .filter(path -> isOurs(folder.relativize(path)))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean isOurs(Path relative) {
        for (Path part : relative) {
            String name = part.toString();
            if ("target".equals(name) || ".git".equals(name) || ".idea".equals(name) || ".settings".equals(name)) {
                return false;
            }
        }
        return true;
    }
}
