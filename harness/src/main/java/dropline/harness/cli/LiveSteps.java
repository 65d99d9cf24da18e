package dropline.harness.cli;

import dropline.harness.link.Ports;
import dropline.harness.suite.LiveStep;
import dropline.harness.suite.StepOutcome;
import dropline.harness.suite.StepOutcome.Standing;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The steps of a suite that need hardware: the commands that people give by hand, and what they came to. */
final class LiveSteps {
    private static final int CONNECT_MILLIS = 2_000;

    private final Console console;
    private final Path pit;
    private final Optional<List<String>> changedNodes;

    /** @param changedNodes whose description has changed since the accepted runs; empty where nothing was accepted */
    LiveSteps(Console console, Path pit, Optional<List<String>> changedNodes) {
        this.console = console;
        this.pit = pit;
        this.changedNodes = changedNodes;
    }

    /** Said of each where nobody asked for them. */
    static StepOutcome notAsked(LiveStep step) {
        return notRun(step, "needs the hardware: give --live with it connected");
    }

    private static StepOutcome notRun(LiveStep step, String why) {
        return new StepOutcome(step.name(), Standing.NOT_RUN, step.words(), List.of(why));
    }

    /** Does what a step says, where its port or server is there. */
    StepOutcome run(LiveStep step) {
        if (step.asked() instanceof LiveStep.Bench bench && bench.isForChanged()) {
            if (changedNodes.isEmpty()) {
                return notRun(step, "nothing was accepted yet, so nobody knows what has changed");
            }
            if (changedNodes.get().isEmpty()) {
                return notRun(step, "no board has changed since the accepted runs");
            }
        }
        Optional<String> missing = missing(step);
        if (missing.isPresent()) {
            return notRun(step, missing.get());
        }
        Standing standing = Standing.PASS;
        List<String> words = new ArrayList<>();
        for (List<String> command : step.commands(pit.toString(), changedNodes.orElse(List.of()))) {
            Ran ran = ran(command);
            standing = worse(standing, ran.standing());
            words.add(ran.words());
        }
        return new StepOutcome(step.name(), standing, step.words(), words);
    }

    private static Optional<String> missing(LiveStep step) {
        if (!step.port().isEmpty()) {
            boolean isThere = Ports.all().stream().anyMatch(port -> port.name().equalsIgnoreCase(step.port()))
                    || (step.port().startsWith("/") && Files.exists(Path.of(step.port())));
            return isThere ? Optional.empty() : Optional.of("there is no port " + step.port() + " now");
        }
        try (Socket socket = new Socket()) {
            InetSocketAddress server = new HostPort().convert(step.server());
            socket.connect(server, CONNECT_MILLIS);
            return Optional.empty();
        } catch (IOException | RuntimeException refused) {
            return Optional.of("nobody answers at " + step.server());
        }
    }

    /** What a command came to, and what it said first. */
    private record Ran(Standing standing, String words) {}

    private Ran ran(List<String> command) {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        ByteArrayOutputStream problems = new ByteArrayOutputStream();
        Console quiet = new Console(
                new PrintWriter(said, false, StandardCharsets.UTF_8),
                said,
                new PrintWriter(problems, true, StandardCharsets.UTF_8),
                false,
                false);
        console.err().println("dropline: " + String.join(" ", command));
        int code = CommandLines.run(quiet, command.toArray(new String[0]));
        quiet.flush();
        Standing standing =
                switch (code) {
                    case ExitCode.PASS -> Standing.PASS;
                    case ExitCode.FAIL ->
                        said.toString(StandardCharsets.UTF_8).startsWith("UNDECIDED")
                                ? Standing.UNDECIDED
                                : Standing.FAIL;
                    default -> Standing.UNDECIDED;
                };
        ByteArrayOutputStream told = said.size() > 0 ? said : problems;
        return new Ran(standing, firstLine(told.toString(StandardCharsets.UTF_8)));
    }

    private static String firstLine(String text) {
        return text.lines()
                .filter(line -> !line.isBlank())
                .findFirst()
                .orElse("")
                .strip();
    }

    private static Standing worse(Standing one, Standing other) {
        if (one == Standing.FAIL || other == Standing.FAIL) {
            return Standing.FAIL;
        }
        return one == Standing.UNDECIDED ? one : other;
    }
}
