package dropline.harness.cli;

import dropline.harness.origin.Trials;
import dropline.harness.problem.Problem;
import dropline.harness.report.SuiteText;
import dropline.harness.suite.PlannedRun;
import dropline.harness.suite.RunOutcome;
import dropline.harness.suite.Suite;
import dropline.harness.suite.SuiteFile;
import dropline.harness.verdict.Outcome;
import dropline.harness.verdict.ReplayResult;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code dropline check}: every run of a suite. */
@Command(
        name = "check",
        header = "Run every flight of a suite through your pit and say whether all still holds.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        parameterListHeading = "%n",
        optionListHeading = "%n",
        descriptionHeading = "%n",
        description = {
            "A suite (docs/suite-file.md) names a pit, the flights to replay through it, with which seeds and",
            "faults, and what must hold. Says first how many runs hold, then, for each run and seed, what was",
            "checked and what broke. Repeat it after every change of the pit file."
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  dropline check my-pit/suite.yaml",
            "",
            "Exit codes:  0 all runs hold   1 one does not, or nothing was checked in it   2 the input is wrong",
            "             3 our own fault"
        })
final class CheckCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(index = "0", paramLabel = "SUITE", description = "The suite file (YAML).")
    @SuppressWarnings("NullAway.Init")
    private Path suite;

    @Mixin
    final Debug debug = new Debug();

    CheckCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws IOException {
        InputFiles.mustExist(suite, "suite file");
        Suite understood = read();
        List<RunOutcome> outcomes = new ArrayList<>();
        for (PlannedRun run : understood.runs()) {
            for (long seed : run.seeds()) {
                outcomes.add(outcome(understood, run, seed));
            }
        }
        String text = SuiteText.of(outcomes, Trials.counted(understood.pit().figures()));
        console.out().print(Colours.painted(text, console.colour()));
        boolean allHold = outcomes.stream().allMatch(outcome -> outcome.outcome() == Outcome.PASS);
        return allHold ? ExitCode.PASS : ExitCode.FAIL;
    }

    private Suite read() throws IOException {
        SuiteFile.Result result = SuiteFile.read(suite);
        if (result instanceof SuiteFile.Understood understood) {
            return understood.suite();
        }
        if (result instanceof SuiteFile.Wrong wrong) {
            throw PitFiles.wrong(wrong.problems());
        }
        throw new AssertionError(result);
    }

    private RunOutcome outcome(Suite understood, PlannedRun run, long seed) throws IOException {
        Session session = new Session(
                console, understood.pit().pit(), run.played(), run.opening(), seed, false, run.faults(), null);
        ReplayResult result = session.run();
        List<Problem> never =
                run.neverStruck(understood.pit().pit(), result.recording().durationNanos());
        if (!never.isEmpty()) {
            throw Session.neverStruck(never);
        }
        return run.holds().judge(run.name(), result);
    }
}
