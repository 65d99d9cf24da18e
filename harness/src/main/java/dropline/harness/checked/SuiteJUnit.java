package dropline.harness.checked;

import dropline.harness.baseline.Checkup;
import dropline.harness.baseline.Deviation;
import dropline.harness.report.JUnitXml;
import dropline.harness.suite.RunOutcome;
import dropline.harness.suite.StepOutcome;
import dropline.harness.verdict.Outcome;
import java.util.ArrayList;
import java.util.List;

/**
 * What became of a suite for build servers: a case for each run and seed, one for each that stands against a baseline.
 */
public final class SuiteJUnit {
    private SuiteJUnit() {}

    public static String of(Checkup checkup) {
        List<JUnitXml.Case> cases = new ArrayList<>();
        for (RunOutcome run : checkup.runs()) {
            cases.add(new JUnitXml.Case(
                    run.run(),
                    "seed " + run.seed(),
                    run.outcome() == Outcome.FAIL ? String.join("; ", SuiteText.broken(run)) : null,
                    run.outcome() == Outcome.UNDECIDED ? "nothing was checked" : null));
        }
        for (StepOutcome step : checkup.steps()) {
            String words = String.join("; ", step.words());
            cases.add(new JUnitXml.Case(
                    "steps",
                    step.step(),
                    step.standing() == StepOutcome.Standing.FAIL ? words : null,
                    step.holds() || step.standing() == StepOutcome.Standing.FAIL ? null : words));
        }
        for (Deviation deviation : checkup.standings().deviations()) {
            cases.add(new JUnitXml.Case(
                    deviation.run(),
                    deviation.subject()
                            + (deviation.figure() == null
                                    ? ""
                                    : ", " + deviation.figure().words()),
                    deviation.isBad() ? BaselineText.words(deviation) : null,
                    null));
        }
        return JUnitXml.of(checkup.suite(), cases);
    }
}
