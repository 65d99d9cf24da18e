package dropline.harness.cli;

import dropline.harness.recording.RecordingException;
import java.io.IOException;
import java.util.List;
import java.util.function.Function;
import java.util.logging.Level;
import java.util.logging.Logger;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Turns arguments into one command's run and its exit code. */
final class CommandLines {
    private static final Logger LOG = Logger.getLogger(CommandLines.class.getName());

    private CommandLines() {}

    /** Runs a command; nothing it throws gets further than here. */
    static int run(Console console, String... arguments) {
        CommandLine line = Commands.of(console, arguments);
        line.setOut(console.out());
        line.setErr(console.err());
        line.setColorScheme(CommandLine.Help.defaultColorScheme(console.colour() ? Ansi.ON : Ansi.OFF));
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setUsageHelpWidth(100);
        line.registerConverter(int.class, text -> whole(text, Integer::valueOf));
        line.registerConverter(Long.class, text -> whole(text, Long::valueOf));
        line.setParameterExceptionHandler((wrong, given) -> wrongUsage(console, wrong));
        line.setExecutionExceptionHandler((failure, command, parsed) -> failed(console, failure, parsed));
        try {
            return line.execute(arguments);
        } catch (Error broken) {
            return ourFault(console, broken, "while running " + List.of(arguments));
        }
    }

    private static <N> N whole(String text, Function<String, N> reading) {
        try {
            return reading.apply(text.strip());
        } catch (NumberFormatException e) {
            throw new TypeConversionException("'" + text + "' is no whole number, or one too large");
        }
    }

    private static int wrongUsage(Console console, ParameterException wrong) {
        // picocli begins its words on groups of options with Error:
        String says = String.valueOf(wrong.getMessage()).replaceFirst("^Error: ", "");
        console.err().println("dropline: " + says);
        UnmatchedArgumentException.printSuggestions(wrong, console.err());
        String command = wrong.getCommandLine().getCommandSpec().qualifiedName();
        console.err().println("Try '" + command + " --help'.");
        return ExitCode.WRONG_INPUT;
    }

    private static int wrongInput(Console console, Exception failure, String message) {
        console.err().println(message.stripTrailing());
        LOG.log(Level.FINE, "wrong input", failure);
        return ExitCode.WRONG_INPUT;
    }

    private static int failed(Console console, Exception failure, ParseResult parsed) {
        console.out().flush();
        if (failure instanceof WrongInput) {
            return wrongInput(console, failure, String.valueOf(failure.getMessage()));
        }
        if (failure instanceof RecordingException recording) {
            String all = String.valueOf(PitFiles.wrong(recording.problems()).getMessage());
            return wrongInput(console, failure, all);
        }
        if (failure instanceof IOException) {
            return wrongInput(
                    console, failure, "dropline: a file could not be read or written: " + failure.getMessage());
        }
        return ourFault(console, failure, "while running " + parsed.originalArgs());
    }

    private static int ourFault(Console console, Throwable failure, String when) {
        console.out().flush();
        console.err().println("dropline: this is a fault of ours, not of your files: " + failure);
        if (!LOG.isLoggable(Level.FINE)) {
            console.err().println("Run it again with --debug to see where it happened, and please report it.");
        }
        LOG.log(Level.FINE, when, failure);
        return ExitCode.OUR_FAULT;
    }
}
