package dropline.harness.cli;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Java's archive of Dropline's classes, which halves the time it takes to start. The launchers name the file and Java
 * uses it where it fits. After a command, a Java in the background writes it anew if Java or the jars have changed.
 * Whatever goes wrong on the way, Dropline only starts more slowly.
 */
final class ClassArchive {
    /** Names the archive's file; the launchers set it. */
    private static final String FILE = "dropline.archive";

    private static final String HOME = "dropline.home";
    private static final String USE = "use";

    private final Path archive;
    private final Path home;

    ClassArchive(Path archive, Path home) {
        this.archive = archive;
        this.home = home;
    }

    /** Sees to the archive that the launcher named, if any. */
    static void keepUp() {
        String file = System.getProperty(FILE);
        String home = System.getProperty(HOME);
        if (file != null && home != null) {
            new ClassArchive(Path.of(file), Path.of(home)).renewIfStale();
        }
    }

    private void renewIfStale() {
        try {
            String made = madeOf();
            Path note = archive.resolveSibling(archive.getFileName() + ".txt");
            if (Files.exists(note) && Files.readString(note).equals(made)) {
                return;
            }
            Files.createDirectories(archive.toAbsolutePath().getParent());
            // noted first: where it cannot be written it is not tried again and again
            Files.writeString(note, made);
            start(java(List.of(), archive.toString()));
        } catch (IOException | SecurityException none) {
            Logger.getLogger(ClassArchive.class.getName()).log(Level.FINE, "no archive of classes", none);
        }
    }

    /** What an archive holds for: this Java, and these jars as they are now. */
    private static String madeOf() {
        StringBuilder made = new StringBuilder(System.getProperty("java.vm.version"))
                .append('\n')
                .append(System.getProperty("java.home"))
                .append('\n');
        for (String name : System.getProperty("java.class.path").split(File.pathSeparator)) {
            File jar = new File(name);
            made.append(name)
                    .append(' ')
                    .append(jar.length())
                    .append(' ')
                    .append(jar.lastModified())
                    .append('\n');
        }
        return made.toString();
    }

    /** A Java that runs this class, as the launchers run the program. */
    private List<String> java(List<String> options, String argument) {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.add("@" + home.resolve("java.options"));
        command.addAll(options);
        command.add("-D" + HOME + "=" + home);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), ClassArchive.class.getName(), argument));
        return command;
    }

    private static Process start(List<String> command) throws IOException {
        return new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    /**
     * Writes an archive whole or not at all: a Java that ends puts its classes into a file, and only then may others
     * have it. Takes the archive's file, or {@value #USE}.
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path home = Path.of(System.getProperty(HOME));
        if (arguments[0].equals(USE)) {
            use(home.resolve("scenarios").resolve("demo"));
            return;
        }
        Path archive = Path.of(arguments[0]);
        Path made = archive.resolveSibling(
                archive.getFileName() + "." + ProcessHandle.current().pid());
        new ClassArchive(archive, home).make(made);
    }

    private void make(Path made) throws IOException, InterruptedException {
        try {
            start(java(List.of("-XX:ArchiveClassesAtExit=" + made), USE)).waitFor();
            if (Files.exists(made)) {
                Files.move(made, archive, StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(made);
        }
    }

    /** Uses what most commands use, so that their classes are known at the end. */
    private static void use(Path demo) {
        String pit = demo.resolve("pit.yaml").toString();
        String flight = demo.resolve("flight.dlr").toString();
        int unused = CommandLines.run(Console.unheard(), "describe", pit);
        unused = CommandLines.run(Console.unheard(), "replay", pit, flight, "--to", "2s");
    }
}
