package dropline.harness.cli;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.problem.Problems;
import dropline.harness.report.Figures;
import dropline.harness.sheet.Sheet;
import dropline.harness.starter.Starter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code dropline new}: a folder with a pit file, a recording and a suite to start from. */
@Command(
        name = "new",
        header = "Make a folder with a pit file, a recording and a suite to start from.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Makes the folder DIR with pit.yaml, a description of a pit to go on from; flight.csv, an invented",
            "minute of flight in which every signal moves and every control is used, so that 'dropline replay'",
            "has something to play at once; and suite.yaml, what 'dropline check' holds the pit to.",
            "",
            "With --panels the pit is made from a spreadsheet saved as CSV, one row a panel. Columns are known",
            "by their headings, in any order: place, panel, segment, address, board, shows, controls, draws,",
            "status. Only panel must be there. Other columns are kept as notes, empty cells are filled by",
            "presets and guesses, and every guess is marked as one. Rows that cannot be understood are told",
            "and kept as comments; the others are read."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline new my-pit",
            "  dropline new my-pit --panels panels.csv",
            "  dropline replay my-pit/pit.yaml my-pit/flight.csv",
            "  dropline check my-pit/suite.yaml",
            "",
            "Exit codes:  0 all was understood   2 something was not; what was is written all the same"
        })
final class NewCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "DIR", description = "The folder to make; it must not hold anything yet.")
    @SuppressWarnings("NullAway.Init")
    private Path folder;

    @Option(names = "--panels", paramLabel = "FILE", description = "A spreadsheet of panels, saved as CSV.")
    private @Nullable Path panels;

    @Mixin
    final Debug debug = new Debug();

    NewCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        mustBeFree();
        if (panels == null) {
            tell(Starter.example(folder));
            return ExitCode.PASS;
        }
        InputFiles.mustExist(panels, "spreadsheet");
        Sheet sheet = Sheet.read(panels);
        if (sheet.rows().isEmpty()) {
            throw new WrongInput(
                    Problems.text(sheet.problems()) + "\ndropline: " + panels + " holds no panel; nothing was written");
        }
        Path last = panels.getFileName();
        Starter.Made made = Starter.fromSheet(folder, sheet, last == null ? "a spreadsheet" : last.toString());
        tell(made);
        if (!sheet.notes().isEmpty()) {
            console.err().println("dropline: columns kept as notes: " + String.join(", ", sheet.notes()));
        }
        if (!sheet.problems().isEmpty()) {
            console.err().print(Problems.text(sheet.problems()));
            console.err()
                    .println("\ndropline: " + Figures.plural(sheet.problems().size(), "problem") + " in " + panels
                            + "; rows that could not be understood stand as comments in "
                            + folder.resolve(Starter.PIT));
        }
        return sheet.problems().isEmpty() && made.pit() != null ? ExitCode.PASS : ExitCode.WRONG_INPUT;
    }

    private void mustBeFree() throws IOException {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new WrongInput("dropline: " + folder + " is a file; the name of a new folder is needed");
        }
        if (Files.isDirectory(folder)) {
            try (Stream<Path> inside = Files.list(folder)) {
                if (inside.findAny().isPresent()) {
                    throw new WrongInput("dropline: " + folder + " is not empty, and nothing in it is overwritten; give"
                            + " the name of a new folder");
                }
            }
        }
    }

    private void tell(Starter.Made made) {
        Path pit = folder.resolve(Starter.PIT);
        if (made.pit() == null) {
            console.out().println("Wrote " + pit + ". Something in it must be put right by hand:");
            console.err().print(Problems.text(made.problems()));
            return;
        }
        Path flight = folder.resolve(Starter.FLIGHT);
        console.out().println("Wrote " + pit + ": " + contents(made.pit()) + ".");
        Path suite = folder.resolve(Starter.SUITE);
        console.out().println("Wrote " + flight + ": an invented minute in which everything moves.");
        console.out().println("Wrote " + suite + ": what must hold after every change of the pit.");
        console.out().println();
        console.out().println("Next:");
        String replay = "dropline replay " + quoted(pit) + " " + quoted(flight);
        next("dropline describe " + quoted(pit), replay, "what was understood, and what follows from it");
        next(replay, replay, "the first verdict");
        next("dropline check " + quoted(suite), replay, "whether everything in the suite holds");
        console.out().println("Then replace what is marked \"guess\" in " + pit + " by what you know.");
    }

    private void next(String command, String longest, String remark) {
        String gap = " ".repeat(longest.length() - command.length() + 3);
        console.out().println("  " + command + gap + remark);
    }

    private static String quoted(Path path) {
        return path.toString().contains(" ") ? '"' + path.toString() + '"' : path.toString();
    }

    private static String contents(Pit pit) {
        Layout layout = Layout.of(pit);
        long panels = pit.segments().stream()
                .flatMap(s -> s.nodes().stream())
                .mapToLong(n -> n.panels().size())
                .sum();
        return Figures.plural(panels, "panel") + " on "
                + Figures.plural(layout.nodes().size(), "node") + " and "
                + Figures.plural(pit.segments().size(), "segment") + ", "
                + Figures.plural(pit.signals().size(), "signal") + ", "
                + Figures.plural(layout.controls().size(), "control");
    }
}
