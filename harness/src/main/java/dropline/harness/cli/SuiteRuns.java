package dropline.harness.cli;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import dropline.harness.problem.Problem;
import dropline.harness.replay.Progress;
import dropline.harness.suite.PlannedRun;
import dropline.harness.suite.Watch;
import dropline.harness.verdict.ReplayResult;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/** Runs of a suite, several side by side; what comes of them is in the order asked for, however many there are. */
final class SuiteRuns {
    private final Console console;
    private final int jobs;

    SuiteRuns(Console console, int jobs) {
        this.console = console;
        this.jobs = jobs;
    }

    /** A run with one seed, and with one fault of those that are tried in turn. */
    record Task(Pit pit, PlannedRun run, PlannedRun.Turn turn, long seed) {
        /** All there are for each of these seeds, those of one seed together. */
        static List<Task> of(Pit pit, PlannedRun run, List<Long> seeds) {
            List<PlannedRun.Turn> turns = run.turns(pit);
            return seeds.stream()
                    .flatMap(seed -> turns.stream().map(turn -> new Task(pit, run, turn, seed)))
                    .toList();
        }
    }

    /** Makes something of what a task came to. */
    interface Maker<T> {
        T of(Task task, ReplayResult result, Watch watch);
    }

    private record Watched(ReplayResult result, Watch watch) {}

    /** Runs them all, and makes something of each result at once, so that results need not be kept. */
    <T> List<T> run(List<Task> tasks, Maker<T> made) throws IOException {
        ExecutorService threads = Executors.newFixedThreadPool(Math.min(jobs, Math.max(1, tasks.size())));
        AtomicInteger done = new AtomicInteger();
        try {
            List<Future<T>> futures = new ArrayList<>();
            for (Task task : tasks) {
                futures.add(threads.submit(() -> {
                    Watched watched = replay(task);
                    T one = made.of(task, watched.result(), watched.watch());
                    tell(done.incrementAndGet(), tasks.size());
                    return one;
                }));
            }
            List<T> all = new ArrayList<>();
            for (Future<T> future : futures) {
                all.add(future.get());
            }
            return all;
        } catch (ExecutionException failed) {
            throw thrown(failed.getCause());
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IOException("the runs were broken off", interrupted);
        } finally {
            threads.shutdownNow();
            if (console.terminal()) {
                console.err().print("\r                                \r");
                console.err().flush();
            }
        }
    }

    private static IOException thrown(@Nullable Throwable cause) {
        if (cause instanceof RuntimeException known) {
            throw known;
        }
        if (cause instanceof Error fault) {
            throw fault;
        }
        return cause instanceof IOException known ? known : new IOException(cause);
    }

    private synchronized void tell(int done, int of) {
        if (console.terminal()) {
            console.err().print("\rrun " + done + " of " + of + "  ");
            console.err().flush();
        }
    }

    private Watched replay(Task task) throws IOException {
        PlannedRun run = task.run();
        List<Fault> faults = task.turn().faults();
        Watch watch = run.holds().watch(task.pit(), faults);
        ReplayResult result = new Session(
                        console, task.pit(), run.played(), run.opening(), task.seed(), false, faults, null)
                .run(watch, Progress.NONE, jobs > 1 ? 1 : Session.threads());
        List<Problem> never = run.neverStruck(task.pit(), result.recording().durationNanos());
        if (!never.isEmpty()) {
            throw Session.neverStruck(never);
        }
        return new Watched(result, watch);
    }
}
