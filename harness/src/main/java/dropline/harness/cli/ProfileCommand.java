package dropline.harness.cli;

import dropline.bus.avr.core.StoppedException;
import dropline.bus.pit.Program;
import dropline.harness.link.Arrival;
import dropline.harness.link.BoardLink;
import dropline.harness.link.Link;
import dropline.harness.profile.TimedTasks;
import dropline.harness.verdict.Words;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code dropline profile}: a profile's tasks, from what a firmware timed itself. */
@Command(
        name = "profile",
        header = "Turn what a firmware has timed itself into the tasks of a profile.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline profile --port PORT|--tcp HOST:PORT [--baud N] [--for T] [--name NAME]",
            "                 [--like PROFILE] [--out FILE]",
            "dropline profile FILE ...",
            "dropline profile --firmware FILE --chip CHIP [--clock MHZ] [--usart N] ..."
        },
        descriptionHeading = "%n",
        description = {
            "A firmware that wraps its slow calls in the macros of dropline_time.h (protocol/firmware/src; it",
            "needs nothing else, and any firmware can use it) prints how long each took at most and how often",
            "it came. This listens to what a board prints, or reads what was kept of it, or runs the program on",
            "an emulated AVR, and writes the profile for a pit file to include. Spoilt lines are counted and left",
            "out. The board is not on the pair meanwhile: what it prints would be heard there."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline profile --port COM5 --for 30s --name oil-board --out oil-board-tasks.yaml",
            "  dropline profile printed.txt --like \"8-bit loop\"",
            "  dropline profile --firmware oil.hex --chip atmega328p",
            "",
            "Exit codes:  0 written   1 nothing was timed   2 the input is wrong   3 our own fault"
        })
final class ProfileCommand implements Callable<Integer> {
    private static final long USUAL_NANOS = 10_000_000_000L;
    private static final long LOOK_NANOS = 250_000_000L;

    private final Console console;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FILE",
            description = "What the board has printed, kept in a file.")
    private @Nullable Path file;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private PortOptions port;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private FirmwareOptions firmware;

    @Option(names = "--baud", paramLabel = "N", description = "The baud rate it prints at, 8N1. Default: 115200.")
    private int baud = 115_200;

    @Option(
            names = "--for",
            paramLabel = "T",
            converter = Durations.class,
            description = "How long to listen. Default: 10s; of a file, how long the board printed it.")
    private long forNanos = USUAL_NANOS;

    @Option(names = "--name", paramLabel = "NAME", description = "What the profile is called. Default: timed.")
    private String name = "timed";

    @Option(
            names = "--like",
            paramLabel = "PROFILE",
            description = "The profile that says everything else. Default: 8-bit loop.")
    private String like = "8-bit loop";

    @Option(names = "--out", paramLabel = "FILE", description = "Write the profile to this file.")
    private @Nullable Path out;

    @Mixin
    final Debug debug = new Debug();

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec command;

    ProfileCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        int ways = (file != null ? 1 : 0) + (port.isGiven() ? 1 : 0) + (firmware.isGiven() ? 1 : 0);
        if (ways != 1) {
            throw new ParameterException(
                    command.commandLine(), "name one of --port, --tcp, --firmware and FILE: where its lines come from");
        }
        firmware.mustBeOfAProgram(command.commandLine());
        if (baud <= 0 || forNanos <= 0) {
            throw new ParameterException(command.commandLine(), "--baud and --for must be above 0");
        }
        OutputFiles.mustBeWritable(out, file == null ? new Path[0] : new Path[] {file});
        TimedTasks tasks = new TimedTasks();
        if (file != null) {
            read(file, tasks);
        } else {
            try (Link link = link()) {
                listen(link, tasks);
                mustRun(link);
            }
        }
        return tell(tasks);
    }

    private static void read(Path file, TimedTasks tasks) throws IOException {
        InputFiles.mustExist(file, "file of printed lines");
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
            for (int next = in.read(); next >= 0; next = in.read()) {
                tasks.take(next);
            }
        }
        tasks.take('\n');
    }

    private Link link() throws IOException {
        if (!firmware.isGiven()) {
            port.caution(console);
            return port.open(baud, CharacterFormat.EIGHT_N_ONE);
        }
        Program program = firmware.program();
        return new BoardLink(
                program.powered(), program.usart(), program.driverEnable(), baud, CharacterFormat.EIGHT_N_ONE);
    }

    /** A program that did what is not modelled has not timed what it would have done. */
    private static void mustRun(Link link) {
        StoppedException stop =
                link instanceof BoardLink board ? board.counterpart().board().stop() : null;
        if (stop != null) {
            throw new WrongInput("dropline: the program stopped, and nothing is written: " + stop.getMessage());
        }
    }

    private void listen(Link link, TimedTasks tasks) throws IOException {
        long until = link.now() + forNanos;
        while (link.now() < until) {
            Arrival arrival = link.await(Math.min(until, link.now() + LOOK_NANOS));
            if (arrival instanceof Arrival.Received received) {
                Bytes bytes = received.bytes();
                for (int i = 0; i < bytes.length(); i++) {
                    tasks.take(bytes.at(i));
                }
            }
        }
    }

    private int tell(TimedTasks tasks) throws IOException {
        if (tasks.spoilt() > 0) {
            console.err()
                    .println("dropline: " + Words.count(tasks.spoilt(), "line") + " of "
                            + (tasks.lines() + tasks.spoilt()) + " came spoilt and "
                            + (tasks.spoilt() == 1 ? "was" : "were") + " left out");
        }
        if (tasks.all().isEmpty()) {
            console.err()
                    .println("dropline: nothing was timed: no line of dropline_time.h came. Is the baud rate " + baud
                            + ", and does the program call dropline_time_print?");
            return ExitCode.FAIL;
        }
        String text =
                tasks.text(name, like, LocalDate.now(ZoneId.systemDefault()).toString(), forNanos);
        Path target = out;
        if (target == null) {
            console.out().print(text);
        } else {
            OutputFiles.write(target, text);
            console.out().println(Words.count(tasks.all().size(), "task") + " written to " + target);
        }
        return ExitCode.PASS;
    }
}
