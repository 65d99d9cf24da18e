package dropline.harness.cli;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.fault.Injection;
import dropline.harness.problem.Problem;
import dropline.harness.problem.Problems;
import dropline.harness.replay.Beside;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Replay;
import dropline.harness.replay.Replayed;
import dropline.harness.replay.RunLimit;
import dropline.harness.replay.Source;
import dropline.harness.replay.StoppedRunException;
import dropline.harness.verdict.InjectedFault;
import dropline.harness.verdict.Outcome;
import dropline.harness.verdict.Recording;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.Run;
import dropline.harness.verdict.Verdicts;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One replay from files to verdicts.
 *
 * @param console hears of the progress, and of what of the recording was left out
 * @param pit what is simulated
 * @param name of what is played, for people
 * @param opening opens it
 * @param seed the run's
 * @param singleFailures whether to run again with each node dead
 * @param faults what goes wrong
 * @param trace where every event goes; null for nowhere
 */
record Session(
        Console console,
        Pit pit,
        String name,
        Source.Opening opening,
        long seed,
        boolean singleFailures,
        List<Fault> faults,
        @Nullable Path trace) {

    ReplayResult run() throws IOException {
        Progress progress = ProgressBar.on(console);
        try {
            return run(Beside.NOBODY, progress, threads());
        } finally {
            ProgressBar.end(progress);
        }
    }

    /** The same with somebody who hears the events too, telling of its progress elsewhere, with so many threads. */
    ReplayResult run(Beside beside, Progress progress, int threads) throws IOException {
        Replayed replayed;
        try {
            replayed = new Replay(pit, opening, seed, threads, faults, RunLimit.USUAL)
                    .run(singleFailures, trace, beside, progress);
        } catch (StoppedRunException stopped) {
            throw new WrongInput("dropline: " + stopped.getMessage(), stopped);
        }
        ProgressBar.end(progress);
        replayed.losses().forEach(loss -> console.err().println("dropline: " + loss));
        Recording recording = new Recording(name, replayed.durationNanos());
        List<InjectedFault> injected = Injection.of(faults, pit, replayed.durationNanos());
        Run run = new Run(
                Version.number(), recording, seed, replayed.digest(), injected, replayed.findings(), replayed.losses());
        return new Verdicts(pit, Layout.of(pit)).of(run, replayed.segments(), replayed.failures());
    }

    /** That faults had no time to strike: whoever asked for them must not take the run for one with them. */
    static WrongInput neverStruck(List<Problem> never) {
        return new WrongInput(Problems.text(never) + "\ndropline: " + never.size()
                + (never.size() == 1 ? " fault" : " faults") + " never struck; nothing is shown or written");
    }

    /** How many threads work side by side. */
    static int threads() {
        return Math.max(1, Runtime.getRuntime().availableProcessors());
    }

    static int exitCode(ReplayResult result) {
        return result.outcome() == Outcome.PASS ? ExitCode.PASS : ExitCode.FAIL;
    }
}
