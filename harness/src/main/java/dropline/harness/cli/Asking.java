package dropline.harness.cli;

import dropline.harness.link.Ports;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * What a start without a command asks in plain words. Each answer leads to a command, which is shown before it runs, so
 * that people learn it; then it asks again, until they leave or nothing more is typed.
 */
final class Asking {
    private static final List<String> CHOICES = List.of(
            "See the demo",
            "Describe my pit",
            "Will one more console fit?",
            "Listen to my bus",
            "Test one board",
            "Leave");

    private final Console console;
    private final BufferedReader typed;
    private final Runner runner;
    private final Supplier<List<String>> ports;

    /** Runs a command. */
    @FunctionalInterface
    interface Runner {
        int run(String... command);
    }

    /** Nothing more is typed. */
    private static final class Over extends Exception {
        private static final long serialVersionUID = 1L;
    }

    Asking(Console console, BufferedReader typed, Runner runner) {
        this(
                console,
                typed,
                runner,
                () -> Ports.all().stream().map(Ports.Port::name).toList());
    }

    /** @param ports the names of the serial ports there are */
    Asking(Console console, BufferedReader typed, Runner runner, Supplier<List<String>> ports) {
        this.console = console;
        this.typed = typed;
        this.runner = runner;
        this.ports = ports;
    }

    /** Asks until there is nothing more to do. */
    int run() throws IOException {
        say("Dropline. 'dropline --help' shows every command.");
        try {
            while (true) {
                say("");
                int choice = choice("What would you like to do?", CHOICES);
                if (choice == CHOICES.size() - 1) {
                    return ExitCode.PASS;
                }
                run(command(choice));
            }
        } catch (Over over) {
            say("");
            return ExitCode.PASS;
        }
    }

    private List<String> command(int choice) throws IOException, Over {
        return switch (choice) {
            case 0 -> List.of("demo");
            case 1 -> describe();
            case 2 -> size();
            case 3 -> listen();
            default -> bench();
        };
    }

    private List<String> describe() throws IOException, Over {
        Optional<Path> pit = file("Your pit file (drag it here), or just Enter for a new one", true);
        if (pit.isPresent()) {
            return List.of("describe", pit.get().toString());
        }
        String folder = text("A name for the new folder", "my-pit");
        Optional<Path> sheet = file("A spreadsheet of your panels as CSV, or just Enter for an example", true);
        List<String> command = new ArrayList<>(List.of("new", folder));
        sheet.ifPresent(file -> command.addAll(List.of("--panels", file.toString())));
        return command;
    }

    private List<String> size() throws IOException, Over {
        List<String> command = new ArrayList<>(List.of("size", needed("Your pit file (drag it here)")));
        file("A recorded flight, or just Enter for the load that the pit file describes", true)
                .ifPresent(flight -> command.add(flight.toString()));
        segment(command);
        return command;
    }

    private List<String> listen() throws IOException, Over {
        List<String> command = new ArrayList<>(List.of("listen"));
        Optional<Path> pit = file("Your pit file, or just Enter where there is none", true);
        if (pit.isPresent()) {
            command.add(pit.get().toString());
            segment(command);
        } else {
            spoken(command);
        }
        command.addAll(List.of("--port", port(), "--for", text("How long", "60s")));
        return command;
    }

    private List<String> bench() throws IOException, Over {
        List<String> command = new ArrayList<>(List.of("bench"));
        Optional<Path> pit = file("Your pit file, or just Enter where there is none", true);
        if (pit.isPresent()) {
            command.addAll(List.of("--pit", pit.get().toString(), "--node", text("The board's name in it", "")));
        } else {
            spoken(command);
            command.addAll(List.of("--address", text("The board's address", "1")));
        }
        say("Connect the board alone. Supplies and USB off while you do; read docs/bench.md first.");
        command.addAll(List.of("--port", port()));
        return command;
    }

    private void spoken(List<String> command) throws IOException, Over {
        List<String> protocols = List.of("dropline", "modbus-rtu");
        String protocol = protocols.get(choice("What does it speak?", protocols));
        command.addAll(List.of("--protocol", protocol, "--baud", text("At what rate", "115200")));
    }

    private void segment(List<String> command) throws IOException, Over {
        String segment = text("Which segment, or just Enter where there is only one", "");
        if (!segment.isEmpty()) {
            command.addAll(List.of("--segment", segment));
        }
    }

    private String port() throws IOException, Over {
        List<String> there = ports.get();
        if (there.isEmpty()) {
            return text("Which serial port? None is plugged in that I can see; its name, such as COM7", "");
        }
        return there.size() == 1
                ? text("Which serial port", there.get(0))
                : there.get(choice("Which serial port?", there));
    }

    private void run(List<String> command) {
        say("");
        say("That is:  dropline "
                + String.join(" ", command.stream().map(Asking::quoted).toList()));
        say("");
        int code = runner.run(command.toArray(new String[0]));
        console.flush();
        if (code == ExitCode.WRONG_INPUT) {
            say("Nothing was done; put that right and choose again.");
        }
    }

    private static String quoted(String word) {
        return word.contains(" ") ? '"' + word + '"' : word;
    }

    // --- one question

    private int choice(String question, List<String> answers) throws IOException, Over {
        say(question);
        for (int i = 0; i < answers.size(); i++) {
            say("  " + (i + 1) + "  " + answers.get(i));
        }
        while (true) {
            String answer = line("> ");
            for (int i = 0; i < answers.size(); i++) {
                if (answer.equals(Integer.toString(i + 1)) || answer.equalsIgnoreCase(answers.get(i))) {
                    return i;
                }
            }
            say("Please type a number from 1 to " + answers.size() + ".");
        }
    }

    /** A piece of text; where {@code standard} is empty, nothing is an answer too. */
    private String text(String question, String standard) throws IOException, Over {
        String answer = line(question + (standard.isEmpty() ? ": " : " [" + standard + "]: "));
        return answer.isEmpty() ? standard : answer;
    }

    private String needed(String question) throws IOException, Over {
        return file(question, false).orElseThrow().toString();
    }

    /** A file that is there; empty only where that is an answer. */
    private Optional<Path> file(String question, boolean mayBeLeftOut) throws IOException, Over {
        while (true) {
            String answer = line(question + ": ");
            if (answer.isEmpty() && mayBeLeftOut) {
                return Optional.empty();
            }
            Optional<Path> found = found(answer);
            if (found.isPresent()) {
                return found;
            }
            say("There is no file " + (answer.isEmpty() ? "without a name" : answer) + "; look at its path.");
        }
    }

    /** A path as typed or dragged: terminals put it in quotes, or a backslash before its spaces. */
    private static Optional<Path> found(String answer) {
        String bare = answer.replaceAll("^(['\"])(.*)\\1$", "$2");
        for (String candidate : List.of(bare, bare.replace("\\ ", " "))) {
            try {
                Path path = Path.of(candidate);
                if (!candidate.isEmpty() && Files.isRegularFile(path)) {
                    return Optional.of(path);
                }
            } catch (InvalidPathException no) {
                return Optional.empty();
            }
        }
        return Optional.empty();
    }

    private String line(String prompt) throws IOException, Over {
        console.out().print(prompt);
        console.out().flush();
        String line = typed.readLine();
        if (line == null) {
            throw new Over();
        }
        return line.strip();
    }

    private void say(String line) {
        console.out().println(line);
        console.out().flush();
    }
}
