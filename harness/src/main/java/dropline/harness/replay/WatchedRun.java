package dropline.harness.replay;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import dropline.bus.run.SegmentRun;
import dropline.bus.trace.TraceSink;
import java.io.IOException;
import java.util.List;

/**
 * Plays a source through a pit once, for sinks of one's own: what a replay does, without its measures.
 *
 * @param pit what is simulated
 * @param opening opens what is played
 * @param seed the run's
 * @param faults what goes wrong
 * @param threads at least 1
 */
public record WatchedRun(Pit pit, Source.Opening opening, long seed, List<Fault> faults, int threads) {

    /** Hears the events of one segment, and may ask its run for the bytes of a frame that starts. */
    public interface Watcher extends TraceSink {
        /** Called once, before the first event. */
        void follow(SegmentRun run);
    }

    /** Called between stretches, while no segment runs. */
    @FunctionalInterface
    public interface Between {
        /** @param untilNanos the run has come so far, ns */
        void stretchEnded(long untilNanos) throws IOException;
    }

    /**
     * What a run came to.
     *
     * @param durationNanos how long it was, ns
     * @param losses what of the recording was left out, a sentence each
     */
    public record Ran(long durationNanos, List<String> losses) {
        public Ran {
            losses = List.copyOf(losses);
        }
    }

    public WatchedRun {
        faults = List.copyOf(faults);
        if (threads < 1) {
            throw new IllegalArgumentException("threads must be at least 1: threads=" + threads);
        }
    }

    /**
     * Runs it.
     *
     * @param watchers one for each segment, in the order of the pit
     * @throws IOException if a file cannot be read or written
     * @throws StoppedRunException if it goes on for too long
     */
    public Ran run(List<? extends Watcher> watchers, Between between, Progress progress) throws IOException {
        List<Lane> lanes = Lane.all(pit, seed, faults, watchers::get);
        for (Lane lane : lanes) {
            lane.segments().forEach(segment -> watchers.get(segment).follow(lane.segment(segment)));
        }
        try (Stretches stretches = new Stretches(threads, RunLimit.USUAL);
                Source source = opening.open()) {
            long end = stretches.run(source, lanes, until -> {
                between.stretchEnded(until);
                progress.reached(until, source.shareAt(until));
            });
            return new Ran(end, source.losses());
        }
    }
}
