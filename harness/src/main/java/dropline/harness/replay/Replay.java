package dropline.harness.replay;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.trace.Digest;
import dropline.bus.trace.TraceSink;
import dropline.harness.finding.Findings;
import dropline.harness.finding.SegmentEvidence;
import dropline.harness.finding.Tiers;
import dropline.harness.measure.SegmentMeasures;
import dropline.harness.verdict.DeadNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Plays a source through a pit and measures. Segments run side by side; what comes out is the same whatever the number
 * of threads.
 */
public final class Replay {
    /** Runs with a dead node that are stepped together, so that memory does not grow with the number of nodes. */
    private static final int TOGETHER = 8;

    private final Pit pit;
    private final Layout layout;
    private final Source.Opening opening;
    private final long seed;
    private final int threads;
    private final List<Fault> faults;
    private final RunLimit limit;

    /** A replay without faults, as far as runs usually may go. */
    public Replay(Pit pit, Source.Opening opening, long seed, int threads) {
        this(pit, opening, seed, threads, List.of(), RunLimit.USUAL);
    }

    /**
     * @param opening opens what is played
     * @param threads at least 1
     * @param faults what goes wrong, in the runs with a dead node as well
     * @param limit how far it may go
     */
    public Replay(Pit pit, Source.Opening opening, long seed, int threads, List<Fault> faults, RunLimit limit) {
        if (threads < 1) {
            throw new IllegalArgumentException("threads must be at least 1: threads=" + threads);
        }
        this.pit = pit;
        this.layout = Layout.of(pit);
        this.opening = opening;
        this.seed = seed;
        this.threads = threads;
        this.faults = List.copyOf(faults);
        this.limit = limit;
    }

    /**
     * Runs it, on the calling thread and the pool's.
     *
     * @param singleFailures whether to run again with each node dead
     * @param trace where to write every event; null for nowhere
     * @throws IOException if a file cannot be read or written
     * @throws StoppedRunException if it goes on for too long
     */
    public Replayed run(boolean singleFailures, @Nullable Path trace, Progress progress) throws IOException {
        return run(singleFailures, trace, Beside.NOBODY, progress);
    }

    /** The same, with somebody who hears the events too; not those of the runs with a dead node. */
    public Replayed run(boolean singleFailures, @Nullable Path trace, Beside beside, Progress progress)
            throws IOException {
        try (Stretches stretches = new Stretches(threads, limit)) {
            int batches = singleFailures ? (layout.nodes().size() + TOGETHER - 1) / TOGETHER : 0;
            Passes passes = new Passes(progress, 1 + batches);
            Replayed healthy = healthy(stretches, trace, beside, passes, !faults.isEmpty());
            if (faults.isEmpty() && isTroubled(healthy)) {
                passes.oneMore();
                healthy = healthy(stretches, null, Beside.NOBODY, passes, true);
            }
            if (!singleFailures) {
                return healthy;
            }
            return new Replayed(
                    healthy.durationNanos(),
                    healthy.digest(),
                    healthy.segments(),
                    failures(stretches, passes),
                    healthy.findings(),
                    healthy.losses());
        }
    }

    /**
     * Whether anything went wrong on a wire or in a node's buffers. A pit as described, in which every frame was had
     * and every poll answered, has nothing wrong that findings could name, so the evidence for them, which costs time,
     * is taken only in a second pass, and only where there is trouble.
     */
    private static boolean isTroubled(Replayed healthy) {
        return healthy.segments().stream()
                .map(SegmentMeasures::bus)
                .anyMatch(bus -> bus.timedOut() + bus.clashes() + bus.overruns() + bus.wrong() > 0);
    }

    private Replayed healthy(Stretches stretches, @Nullable Path trace, Beside beside, Passes passes, boolean watched)
            throws IOException {
        if (trace == null) {
            return healthyTraced(stretches, null, beside, passes, watched);
        }
        try (TraceFile file = TraceFile.create(trace, pit, seed, TraceFile.SIMULATED)) {
            return healthyTraced(stretches, file, beside, passes, watched);
        }
    }

    private Replayed healthyTraced(
            Stretches stretches, @Nullable TraceFile trace, Beside beside, Passes passes, boolean watched)
            throws IOException {
        List<SegmentMeasures> measures = new ArrayList<>();
        List<SegmentEvidence> evidence = new ArrayList<>();
        List<TraceSink> sinks = new ArrayList<>();
        for (int segment = 0; segment < pit.segments().size(); segment++) {
            SegmentMeasures measured = new SegmentMeasures(pit, layout, segment);
            TraceSink sink = beside.with(segment, measured);
            if (watched) {
                SegmentEvidence seen = new SegmentEvidence(pit, layout, segment, Tiers.ALL);
                evidence.add(seen);
                sink = new Both(sink, seen.sink());
            }
            if (trace != null) {
                sink = new Both(sink, trace.segment(segment));
            }
            measures.add(measured);
            sinks.add(sink);
        }
        List<Lane> lanes = Lane.all(pit, seed, faults, sinks::get);
        try (Source source = opening.open()) {
            long end = stretches.run(source, lanes, until -> {
                if (trace != null) {
                    trace.merge();
                }
                passes.reached(until, source);
            });
            return new Replayed(
                    end, digest(lanes), measures, List.of(), Findings.of(pit, layout, evidence), source.losses());
        }
    }

    private List<DeadNode> failures(Stretches stretches, Passes passes) throws IOException {
        List<DeadNode> failures = new ArrayList<>();
        for (int first = 0; first < layout.nodes().size(); first += TOGETHER) {
            List<Lane> lanes = new ArrayList<>();
            passes.next();
            for (int node = first;
                    node < Math.min(first + TOGETHER, layout.nodes().size());
                    node++) {
                lanes.add(dead(node, failures));
            }
            try (Source source = opening.open()) {
                stretches.run(source, lanes, until -> passes.reached(until, source));
            }
        }
        return failures;
    }

    /** The lane of a node's segment with the node dead; who feels it are those that run in it. */
    private Lane dead(int node, List<DeadNode> failures) {
        int struck = layout.nodes().get(node).segment();
        Map<Integer, SegmentMeasures> measures = new TreeMap<>();
        for (int segment : pit.runsWith(struck)) {
            measures.put(segment, new SegmentMeasures(pit, layout, segment));
        }
        failures.add(new DeadNode(node, struck, List.copyOf(measures.values())));
        List<Fault> dead = new ArrayList<>(List.of(Fault.deadNode(struck, node)));
        dead.addAll(faults);
        return Lane.of(pit, struck, seed, dead, measures::get);
    }

    private static long digest(List<Lane> lanes) {
        Map<Integer, Long> digests = new TreeMap<>();
        for (Lane lane : lanes) {
            lane.segments().forEach(s -> digests.put(s, lane.segment(s).digest()));
        }
        long digest = 0;
        for (long one : digests.values()) {
            digest = Digest.combine(digest, one);
        }
        return digest;
    }

    /** How far one pass of several has come. */
    private static final class Passes {
        private final Progress progress;
        private int count;
        private int done;

        Passes(Progress progress, int count) {
            this.progress = progress;
            this.count = count;
        }

        /** There is one more pass than was thought. */
        void oneMore() {
            count++;
            done++;
        }

        void next() {
            done++;
        }

        void reached(long nanos, Source source) {
            progress.reached(nanos, (done + source.shareAt(nanos)) / count);
        }
    }
}
