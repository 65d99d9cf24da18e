package dropline.harness.size;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.replay.Progress;
import dropline.harness.replay.RunLimit;
import dropline.harness.replay.Sweep;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import org.jspecify.annotations.Nullable;

/**
 * Judges segments of given pits, side by side. What comes out depends on the candidates alone, not on the number of
 * threads.
 */
public final class Judging implements AutoCloseable {
    private static final TraceSink UNHEARD = new TraceSink() {};

    private final ForkJoinPool pool;

    /** @param threads at least 1 */
    public Judging(int threads) {
        pool = new ForkJoinPool(threads);
    }

    /** Lets go of its threads. */
    @Override
    public void close() {
        pool.shutdownNow();
    }

    /** One after the other in the order given, found side by side. */
    public List<Fare> all(List<Candidate> candidates) throws IOException {
        return each(candidates, Judging::judge);
    }

    /** The same, each broken off where a demand has been missed beyond doubt; those set aside are left out. */
    public List<Fare> all(List<Candidate> candidates, Demand demand) throws IOException {
        return each(candidates, candidate -> judge(candidate, demand).with(demand.aside()));
    }

    /** Does something for each, side by side; may be called from within itself. */
    public <A, B> List<B> each(List<A> all, Work<A, B> work) throws IOException {
        List<ForkJoinTask<B>> tasks = new ArrayList<>();
        for (A one : all) {
            Callable<B> task = () -> work.of(one);
            tasks.add(ForkJoinTask.adapt(task));
        }
        try {
            if (ForkJoinTask.getPool() == pool) {
                ForkJoinTask.invokeAll(tasks);
            } else {
                pool.submit(() -> ForkJoinTask.invokeAll(tasks)).join();
            }
        } catch (RuntimeException failed) {
            throw unwrapped(failed);
        }
        return tasks.stream().map(ForkJoinTask::join).toList();
    }

    /** Begins something beside what else is done. */
    <A> Begun<A> begin(Callable<A> work) {
        ForkJoinTask<A> task = pool.submit(work);
        return () -> {
            try {
                return task.join();
            } catch (RuntimeException failed) {
                throw unwrapped(failed);
            }
        };
    }

    /** Something under way. */
    @FunctionalInterface
    interface Begun<A> {
        /** Waits for it. */
        A result() throws IOException;
    }

    /** What is done for each. */
    @FunctionalInterface
    public interface Work<A, B> {
        B of(A one) throws IOException;
    }

    /** What went wrong, without what the pool wraps around it. */
    private static RuntimeException unwrapped(RuntimeException failed) throws IOException {
        Throwable cause = failed;
        while (cause.getCause() != null && cause.getClass() == RuntimeException.class) {
            cause = cause.getCause();
        }
        if (cause instanceof IOException wrong) {
            throw wrong;
        }
        return cause instanceof RuntimeException wrong ? wrong : failed;
    }

    /** Plays one to its end, on the calling thread. */
    static Fare judge(Candidate candidate) throws IOException {
        Run run = new Run(candidate);
        play(candidate, run, Progress.NONE);
        return run.fare();
    }

    /** The same, broken off where a demand has been missed beyond doubt. */
    static Fare judge(Candidate candidate, Demand demand) throws IOException {
        Run run = new Run(candidate);
        try {
            play(candidate, run, (reached, share) -> run.mustBeWorthGoingOn(demand));
        } catch (Enough enough) {
            return run.fare();
        }
        return run.fare();
    }

    private static void play(Candidate candidate, Run run, Progress progress) throws IOException {
        Sweep.onThisThread(candidate.opening(), candidate.seed(), RunLimit.USUAL)
                .run(List.of(run), progress);
    }

    /** Nothing more need be known of a run. */
    private static final class Enough extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Enough() {
            super("a run was broken off", null, false, false);
        }
    }

    /** One candidate's run; others that run with its segment are not measured. */
    private static final class Run implements Sweep.Variant {
        private final Candidate candidate;
        private final int dead;
        private @Nullable SegmentMeasures measures;

        Run(Candidate candidate) {
            this.candidate = candidate;
            dead = candidate.dead() == Candidate.HEALTHY
                    ? -1
                    : Aside.firstNode(candidate.pit(), candidate.segment()) + candidate.dead();
        }

        @Override
        public Pit pit() {
            return candidate.pit();
        }

        @Override
        public int segment() {
            return candidate.segment();
        }

        @Override
        public List<Fault> faults() {
            return dead < 0 ? List.of() : List.of(Fault.deadNode(candidate.segment(), dead));
        }

        @Override
        public TraceSink begin(int begun) {
            if (begun != candidate.segment()) {
                return UNHEARD;
            }
            SegmentMeasures measured =
                    new SegmentMeasures(candidate.pit(), Layout.of(candidate.pit()), candidate.segment());
            measures = measured;
            return measured;
        }

        @Override
        public void ended() {
            // measures() are read once the sweep is over
        }

        void mustBeWorthGoingOn(Demand demand) {
            if (measures != null && measures.endNanos() == 0 && demand.isMissedBy(measures, dead)) {
                throw new Enough();
            }
        }

        Fare fare() {
            if (measures == null) {
                throw new IllegalStateException("a run must have begun to be judged");
            }
            return Fare.of(measures, dead);
        }
    }
}
