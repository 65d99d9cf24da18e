package dropline.harness.replay;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Plays one source through many variants of single lanes: a segment, or those of one board. Variants are taken in
 * batches, each over one reading of the source, so that memory does not grow with their number; they share nothing, so
 * that what comes out is the same whatever the number of threads.
 */
public final class Sweep {
    private static final int LEAST_TOGETHER = 32;
    private static final int TOGETHER_A_THREAD = 4;

    private final Source.Opening opening;
    private final long seed;
    private final int threads;
    private final RunLimit limit;
    private final boolean here;

    /** One lane to run with some faults. */
    public interface Variant {
        /** The pit whose lane it is; all variants' pits have the same signals. */
        Pit pit();

        /** Index into {@link Pit#segments()} of one of the lane's segments; those that run with it do so. */
        int segment();

        List<Fault> faults();

        /** Called for each of its segments before its run, on the thread that sweeps: where its events go. */
        TraceSink begin(int segment);

        /** Called after its run, on the thread that sweeps. */
        void ended();
    }

    /** @param threads at least 1 */
    public Sweep(Source.Opening opening, long seed, int threads, RunLimit limit) {
        this(opening, seed, threads, limit, false);
        if (threads < 1) {
            throw new IllegalArgumentException("threads must be at least 1: threads=" + threads);
        }
    }

    private Sweep(Source.Opening opening, long seed, int threads, RunLimit limit, boolean here) {
        this.opening = opening;
        this.seed = seed;
        this.threads = threads;
        this.limit = limit;
        this.here = here;
    }

    /** One that runs on the calling thread alone, for callers that are many side by side. */
    public static Sweep onThisThread(Source.Opening opening, long seed, RunLimit limit) {
        return new Sweep(opening, seed, 1, limit, true);
    }

    /**
     * Runs all of them; tells how long a run was, ns.
     *
     * @param variants at least one
     * @throws IOException if the source cannot be read
     * @throws StoppedRunException if a run goes on for too long
     */
    public Swept run(List<? extends Variant> variants, Progress progress) throws IOException {
        try (Stretches stretches = here ? new Stretches(limit) : new Stretches(threads, limit)) {
            int together = Math.max(LEAST_TOGETHER, TOGETHER_A_THREAD * threads);
            Swept swept = new Swept(0, List.of());
            for (int first = 0; first < variants.size(); first += together) {
                int end = Math.min(first + together, variants.size());
                double before = (double) first / variants.size();
                double share = (double) (end - first) / variants.size();
                swept = batch(
                        stretches,
                        variants.subList(first, end),
                        (reached, part) -> progress.reached(reached, before + share * part));
            }
            return swept;
        }
    }

    /**
     * What the source was found to be.
     *
     * @param durationNanos how long a run was, ns
     * @param losses what of the recording was left out, a sentence each
     */
    public record Swept(long durationNanos, List<String> losses) {
        public Swept {
            losses = List.copyOf(losses);
        }
    }

    private Swept batch(Stretches stretches, List<? extends Variant> variants, Progress progress) throws IOException {
        List<Lane> lanes = new ArrayList<>();
        for (Variant variant : variants) {
            lanes.add(Lane.of(variant.pit(), variant.segment(), seed, variant.faults(), variant::begin));
        }
        try (Source source = opening.open()) {
            long end = stretches.run(source, lanes, until -> progress.reached(until, source.shareAt(until)));
            variants.forEach(Variant::ended);
            return new Swept(end, source.losses());
        }
    }
}
