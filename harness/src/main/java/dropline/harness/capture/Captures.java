package dropline.harness.capture;

import dropline.bus.pit.Pit;
import dropline.harness.replay.WatchedRun;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The captures of all segments of a pit, and the sinks they go to. */
public final class Captures implements WatchedRun.Between {
    private final List<SegmentCapture> segments = new ArrayList<>();
    private final List<CaptureSink> sinks;
    private long frames;

    /** @param sinks take what is captured */
    public Captures(Pit pit, Stretch stretch, List<CaptureSink> sinks) {
        this.sinks = List.copyOf(sinks);
        for (int segment = 0; segment < pit.segments().size(); segment++) {
            segments.add(new SegmentCapture(segment, new Talkers(pit, segment), stretch));
        }
    }

    /** What watches each segment, in the order of the pit. */
    public List<SegmentCapture> watchers() {
        return List.copyOf(segments);
    }

    /** Frames captured so far. */
    public long frames() {
        return frames;
    }

    @Override
    public void stretchEnded(long untilNanos) throws IOException {
        long horizon = Long.MAX_VALUE;
        for (int segment = 0; segment < segments.size(); segment++) {
            SegmentCapture capture = segments.get(segment);
            List<SentFrame> taken = capture.takeFrames();
            List<DriverChange> drivers = capture.takeDrivers();
            frames += taken.size();
            for (CaptureSink sink : sinks) {
                sink.take(segment, taken, drivers);
            }
            horizon = Math.min(horizon, capture.horizonNanos());
        }
        for (CaptureSink sink : sinks) {
            sink.reached(horizon);
        }
    }
}
