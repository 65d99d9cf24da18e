package dropline.harness.cli;

import dropline.bus.pit.Pit;
import dropline.harness.problem.Problem;
import dropline.harness.replay.Progress;
import dropline.harness.suite.PlannedRun;
import dropline.harness.verdict.ReplayResult;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiFunction;
import org.jspecify.annotations.Nullable;

/** Runs of a suite, several side by side; what comes of them is in the order asked for, however many there are. */
final class SuiteRuns {
    private final Console console;
    private final int jobs;

    SuiteRuns(Console console, int jobs) {
        this.console = console;
        this.jobs = jobs;
    }

    /** A run with one seed. */
    record Task(Pit pit, PlannedRun run, long seed) {
        /** One for each of these seeds. */
        static List<Task> of(Pit pit, PlannedRun run, List<Long> seeds) {
            return seeds.stream().map(seed -> new Task(pit, run, seed)).toList();
        }
    }

    /** Runs them all, and makes something of each result at once, so that results need not be kept. */
    <T> List<T> run(List<Task> tasks, BiFunction<PlannedRun, ReplayResult, T> made) throws IOException {
        ExecutorService threads = Executors.newFixedThreadPool(Math.min(jobs, Math.max(1, tasks.size())));
        AtomicInteger done = new AtomicInteger();
        try {
            List<Future<T>> futures = new ArrayList<>();
            for (Task task : tasks) {
                futures.add(threads.submit(() -> {
                    T one = made.apply(task.run(), replay(task));
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

    private ReplayResult replay(Task task) throws IOException {
        PlannedRun run = task.run();
        ReplayResult result = new Session(
                        console, task.pit(), run.played(), run.opening(), task.seed(), false, run.faults(), null)
                .run(Progress.NONE, jobs > 1 ? 1 : Session.threads());
        List<Problem> never = run.neverStruck(task.pit(), result.recording().durationNanos());
        if (!never.isEmpty()) {
            throw Session.neverStruck(never);
        }
        return result;
    }
}
