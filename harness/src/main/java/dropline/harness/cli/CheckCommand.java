package dropline.harness.cli;

import dropline.harness.baseline.Checkup;
import dropline.harness.baseline.Checkup.Reasons;
import dropline.harness.checked.BaselineText;
import dropline.harness.checked.SuiteJUnit;
import dropline.harness.checked.SuitePage;
import dropline.harness.checked.SuiteText;
import dropline.harness.json.SuiteJson;
import dropline.harness.suite.Suite;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code dropline check}: every run of a suite. */
@Command(
        name = "check",
        header = "Run every flight of a suite through your pit and say whether all still holds.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        sortOptions = false,
        customSynopsis = {
            "dropline check SUITE [--accept | --why | --watch] [--live] [--jobs N]",
            "               [--html FILE] [--junit FILE] [--json FILE|-]"
        },
        descriptionHeading = "%n",
        description = {
            "A suite (docs/suite-file.md) names a pit, the flights to replay through it, with which seeds and",
            "faults, and what must hold. Says first how many runs hold, then, for each run and seed, what was",
            "checked and what broke. Repeat it after every change of the pit file. Once runs were accepted, it",
            "also says what is worse, better, new or gone beyond what chance explains (docs/baselines.md)."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline check my-pit/suite.yaml",
            "  dropline check my-pit/suite.yaml --accept",
            "  dropline check my-pit/suite.yaml --why --html check.html",
            "  dropline check my-pit/suite.yaml --watch",
            "",
            "Exit codes:  0 all hold, none is worse   1 not so, or not checked   2 the input is wrong",
            "             3 our own fault"
        })
final class CheckCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "SUITE", description = "The suite file (YAML).")
    @SuppressWarnings("NullAway.Init")
    private Path suite;

    @Option(
            names = "--accept",
            description = "Take what comes of it for good: repeat each run with 20 seeds and write the accepted runs"
                    + " beside the suite.")
    private boolean accept;

    @Option(
            names = "--why",
            description =
                    "Say what changed in the pit file since the accepted runs, and which of it makes things worse.")
    private boolean why;

    @Option(names = "--live", description = "Do the suite's live steps as well, for which hardware must be connected.")
    private boolean live;

    @Option(names = "--jobs", paramLabel = "N", description = "Runs side by side. Default: one for each processor.")
    private int jobs = Session.threads();

    @Option(
            names = "--watch",
            description = "Look again whenever a file of the suite is saved, and say what is different then.")
    private boolean watch;

    @Option(
            names = "--html",
            paramLabel = "FILE",
            description = "Write a page: what has changed first, then every run.")
    private @Nullable Path html;

    @Option(names = "--junit", paramLabel = "FILE", description = "Write the verdicts as JUnit XML.")
    private @Nullable Path junit;

    @Mixin
    @SuppressWarnings("NullAway.Init")
    private JsonOutput json;

    @Mixin
    final Debug debug = new Debug();

    CheckCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        InputFiles.mustExist(suite, "suite file");
        if (jobs < 1) {
            throw new WrongInput("dropline: --jobs must be at least 1, not " + jobs);
        }
        if ((accept ? 1 : 0) + (why ? 1 : 0) + (watch ? 1 : 0) > 1) {
            throw new WrongInput("dropline: only one of --accept, --why and --watch can be asked for at a time");
        }
        if (watch && live) {
            throw new WrongInput("dropline: --live moves real panels and is not done anew at every save; leave out"
                    + " --watch or --live");
        }
        OutputFiles.mustBeWritable(html, suite);
        OutputFiles.mustBeWritable(junit, suite);
        OutputFiles.mustBeWritable(json.file(), suite);
        Checker checker = new Checker(console, suite, jobs, live);
        if (watch) {
            return new SuiteWatch(console, checker, suite).run(look -> {
                write(look.checkup(), null);
                json.writeFile(out -> SuiteJson.write(look.checkup(), out));
            });
        }
        Suite understood = checker.read();
        Checkup checkup = checker.look(understood, !accept).checkup();
        BaselineCheck baseline = checker.baseline(understood);
        Reasons reasons = why ? baseline.why(checkup.standings().deviations()) : null;
        String text = SuiteText.of(checkup) + (reasons == null ? "" : BaselineText.of(reasons));
        if (accept) {
            text += "\n" + baseline.accept() + "\n";
        }
        write(checkup, reasons);
        json.write(console, out -> SuiteJson.write(checkup, out), text);
        return checkup.passes() ? ExitCode.PASS : ExitCode.FAIL;
    }

    private void write(Checkup checkup, @Nullable Reasons reasons) throws IOException {
        if (html != null) {
            OutputFiles.write(html, SuitePage.html(checkup, reasons, Version.number()));
        }
        if (junit != null) {
            OutputFiles.write(junit, SuiteJUnit.of(checkup));
        }
    }
}
