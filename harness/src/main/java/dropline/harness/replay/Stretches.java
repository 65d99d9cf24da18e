package dropline.harness.replay;

import dropline.bus.host.StateBlock;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;
import org.jspecify.annotations.Nullable;

/**
 * Takes lanes through a source, stretch by stretch: while all lanes step through one, the next is read. No lane is
 * ahead of another by more than a stretch, and since lanes share nothing, their results do not depend on the number of
 * threads.
 */
final class Stretches implements AutoCloseable {
    /** How much of the recording is held at a time, ns. */
    static final long STRETCH_NANOS = 2_000_000_000L;

    private final Executor threads;
    private final Runnable letGo;
    private final RunLimit limit;

    /**
     * @param count how many threads step lanes, at least 1
     * @param limit how far a run may go
     */
    Stretches(int count, RunLimit limit) {
        this.limit = limit;
        ExecutorService pool = Executors.newFixedThreadPool(count, work -> {
            Thread thread = new Thread(work, "segment");
            thread.setDaemon(true);
            return thread;
        });
        threads = pool;
        letGo = pool::shutdownNow;
    }

    /** Steps lanes on the calling thread, one after the other. */
    Stretches(RunLimit limit) {
        this.limit = limit;
        threads = Runnable::run;
        letGo = () -> {};
    }

    /** Lets go of its threads. */
    @Override
    public void close() {
        letGo.run();
    }

    /** Called between stretches, when no lane is running. */
    @FunctionalInterface
    interface Between {
        void stretchEnded(long untilNanos) throws IOException;
    }

    /** Runs to the end of the source; tells where that was, ns. */
    long run(Source source, List<Lane> lanes, Between between) throws IOException {
        StateBlock now = new StateBlock();
        StateBlock next = new StateBlock();
        long from = 0;
        long until = Math.min(STRETCH_NANOS, source.endNanos());
        boolean more = source.feed().fill(now, until);
        while (more && until < source.endNanos()) {
            mustBeWithinLimit(until);
            List<Future<?>> steps = start(lanes, now, until);
            from = until;
            until = Math.min(from + STRETCH_NANOS, source.endNanos());
            try {
                more = source.feed().fill(next, until);
            } finally {
                await(steps);
            }
            between.stretchEnded(from);
            StateBlock read = next;
            next = now;
            now = read;
        }
        long end = more ? until : Math.min(until, Math.max(from, source.reachedNanos() + 1));
        await(start(lanes, now, end));
        for (Lane lane : lanes) {
            lane.end();
        }
        between.stretchEnded(end);
        return end;
    }

    private void mustBeWithinLimit(long untilNanos) {
        if (untilNanos > limit.longestNanos()) {
            throw new StoppedRunException("the run was stopped at its time limit, "
                    + limit.longestNanos() / 1_000_000_000L + " s: more of it was still to come. Look whether the"
                    + " recording counts its time in the unit you think (recording: time: in the pit file), or play a"
                    + " shorter stretch: --from and --to, or --for");
        }
    }

    private List<Future<?>> start(List<Lane> lanes, StateBlock block, long untilNanos) {
        List<Future<?>> steps = new ArrayList<>();
        for (Lane lane : lanes) {
            FutureTask<?> step = new FutureTask<>(() -> lane.step(block, untilNanos), null);
            threads.execute(step);
            steps.add(step);
        }
        return steps;
    }

    /** Waits for all of them, whatever becomes of one; then says what went wrong first. */
    private static void await(List<Future<?>> steps) {
        RuntimeException wrong = null;
        for (Future<?> step : steps) {
            try {
                step.get();
            } catch (ExecutionException failed) {
                wrong = wrong == null ? ofSegment(failed.getCause()) : wrong;
            } catch (InterruptedException interrupted) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException("interrupted", interrupted);
            }
        }
        if (wrong != null) {
            throw wrong;
        }
    }

    private static RuntimeException ofSegment(@Nullable Throwable cause) {
        return cause instanceof StoppedRunException stopped
                ? stopped
                : new IllegalStateException("a segment failed", cause);
    }
}
