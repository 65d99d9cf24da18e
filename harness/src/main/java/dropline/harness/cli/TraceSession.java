package dropline.harness.cli;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import dropline.harness.capture.CaptureSink;
import dropline.harness.capture.Captures;
import dropline.harness.capture.FrameWords;
import dropline.harness.capture.PcapngFile;
import dropline.harness.capture.Resolution;
import dropline.harness.capture.Stretch;
import dropline.harness.capture.VcdFile;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Source;
import dropline.harness.replay.WatchedRun;
import dropline.harness.report.Figures;
import dropline.harness.timeline.Timeline;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One run, of which a stretch is written.
 *
 * @param console hears of the progress, and of what was written
 * @param pit what is simulated
 * @param player plays it
 * @param run what it is called in the files: {@code seed 1}
 * @param faults what goes wrong
 * @param stretch what is written
 * @param outputs where to
 */
record TraceSession(
        Console console, Pit pit, Player player, String run, List<Fault> faults, Stretch stretch, Outputs outputs) {

    /** How long a run goes on after the stretch, so that what became of its last frames is known, ns. */
    private static final long AFTERWARDS_NANOS = 1_000_000_000L;

    /**
     * Where to write; null for nowhere.
     *
     * @param resolution of the waveforms
     * @param segment index of the segment that is drawn
     */
    record Outputs(
            @Nullable Path vcd,
            Resolution resolution,
            @Nullable Path pcapng,
            @Nullable Path timeline,
            int segment) {}

    /** What brings the events. */
    @FunctionalInterface
    interface Player {
        /**
         * Plays everything to the captures.
         *
         * @return how long it was, ns
         */
        long play(Captures captures) throws IOException;
    }

    TraceSession {
        faults = List.copyOf(faults);
    }

    /** Where the run for a stretch ends, ns. */
    static long endNanos(Stretch stretch) {
        return stretch.toNanos() + AFTERWARDS_NANOS;
    }

    void write() throws IOException {
        List<CaptureSink> sinks = new ArrayList<>();
        try {
            if (outputs.vcd() != null) {
                sinks.add(VcdFile.create(outputs.vcd(), pit, run, faults, stretch, outputs.resolution()));
            }
            if (outputs.pcapng() != null) {
                sinks.add(PcapngFile.create(outputs.pcapng(), pit, run));
            }
            Timeline drawing = null;
            if (outputs.timeline() != null) {
                drawing = Timeline.create(outputs.timeline(), pit, outputs.segment(), run);
                sinks.add(drawing);
            }
            play(sinks);
            if (drawing != null && drawing.count() > drawing.drawn()) {
                console.err()
                        .println("dropline: the drawing shows the first " + drawing.drawn() + " of "
                                + drawing.count() + " frames, more cannot be read; the next begins at "
                                + FrameWords.seconds(drawing.nextNanos()) + " s");
            }
        } finally {
            closeAll(sinks);
        }
    }

    private void play(List<CaptureSink> sinks) throws IOException {
        Captures captures = new Captures(pit, stretch, sinks);
        long duration = player.play(captures);
        if (duration <= stretch.fromNanos()) {
            throw new WrongInput("dropline: what is played ends at " + Figures.instant(duration)
                    + ", before --from: there is nothing to write");
        }
        console.out().println("Wrote " + Figures.plural(captures.frames(), "frame") + ".");
    }

    /** Simulates the pit with what is opened. */
    static Player simulated(Console console, Pit pit, Source.Opening opening, long seed, List<Fault> faults) {
        return captures -> {
            int threads = Math.max(1, Runtime.getRuntime().availableProcessors());
            WatchedRun run = new WatchedRun(pit, opening, seed, faults, threads);
            Progress progress = ProgressBar.on(console);
            try {
                WatchedRun.Ran ran = run.run(captures.watchers(), captures, progress);
                ProgressBar.end(progress);
                ran.losses().forEach(loss -> console.err().println("dropline: " + loss));
                return ran.durationNanos();
            } finally {
                ProgressBar.end(progress);
            }
        };
    }

    private static void closeAll(List<CaptureSink> sinks) throws IOException {
        IOException wrong = null;
        for (CaptureSink sink : sinks) {
            try {
                sink.close();
            } catch (IOException failed) {
                wrong = wrong == null ? failed : wrong;
            }
        }
        if (wrong != null) {
            throw wrong;
        }
    }
}
