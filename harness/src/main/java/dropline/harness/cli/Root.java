package dropline.harness.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command without a command: says what there is. */
@Command(
        name = "dropline",
        description = {
            "Tells a home cockpit builder, before anything is wired, whether the panels on an RS-485 segment",
            "show what the simulator says in time."
        },
        synopsisSubcommandLabel = "COMMAND",
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline demo                               replay the demo flight and write a report",
            "  dropline new my-pit --panels panels.csv     a pit file from your spreadsheet of panels",
            "  dropline describe pit.yaml                  what was understood of your pit file",
            "  dropline replay pit.yaml flight.csv         replay your flight through your pit",
            "  dropline check suite.yaml                   run all your flights again after a change",
            "  dropline size pit.yaml flight.csv           how many more panels fit",
            "  dropline survive pit.yaml flight.csv        let every single fault strike in turn",
            "  dropline meter pit.yaml                     what a multimeter should read on the wires",
            "  dropline power pit.yaml                     what the supplies give and what arrives",
            "  dropline bench --pit pit.yaml --node oil-board   is this board fit to wire",
            "  dropline roll-call pit.yaml --port COM7     which of your boards answer",
            "  dropline drive pit.yaml flight.csv --port COM7   the same flight on the real boards",
            "  dropline replay --help                      everything about one command",
            "",
            "Started without a command on a terminal, or by a double click, it asks what you would like to do.",
            "",
            "Exit codes:  0 all pass   1 something fails or is undecided   2 the input is wrong   3 our own fault"
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        scope = picocli.CommandLine.ScopeType.LOCAL)
final class Root implements Callable<Integer> {
    private final Console console;

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    Root(Console console) {
        this.console = console;
    }

    /** Somebody who sits there is asked; a script that forgot its command is told so. */
    @Override
    public Integer call() throws IOException {
        if (!console.terminal()) {
            throw new ParameterException(spec.commandLine(), "a command is missing");
        }
        BufferedReader typed = new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
        return new Asking(console, typed, command -> CommandLines.run(console, command)).run();
    }
}
