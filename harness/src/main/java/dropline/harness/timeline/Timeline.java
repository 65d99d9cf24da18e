package dropline.harness.timeline;

import dropline.bus.pit.Pit;
import dropline.harness.capture.CaptureSink;
import dropline.harness.capture.DriverChange;
import dropline.harness.capture.FrameWords;
import dropline.harness.capture.SentFrame;
import dropline.harness.capture.Talkers;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Who talked when on one segment, as an SVG file: lanes per talker, its data and its driver apart, the margins at both
 * edges of each frame in us and bit times. Draws the first frames of the stretch, as many as can be read.
 */
public final class Timeline implements CaptureSink {
    /** More cannot be read in one drawing. */
    public static final int MOST_FRAMES = 60;

    private final Path file;
    private final Pit pit;
    private final int segment;
    private final String run;
    private final Talkers talkers;
    private final List<SentFrame> frames = new ArrayList<>();
    private final List<DriverChange> changes = new ArrayList<>();
    private long count;
    private long nextNanos;

    private Timeline(Path file, Pit pit, int segment, String run) {
        this.file = file;
        this.pit = pit;
        this.segment = segment;
        this.run = run;
        talkers = new Talkers(pit, segment);
    }

    /** Creates the file, which is drawn when it is closed. */
    public static Timeline create(Path file, Pit pit, int segment, String run) throws IOException {
        Files.writeString(file, "");
        return new Timeline(file, pit, segment, run);
    }

    /** Frames of the segment in the stretch. */
    public long count() {
        return count;
    }

    /** Frames drawn. */
    public int drawn() {
        return frames.size();
    }

    /** Where the first frame begins that is not drawn, ns; meaningful only where there is one. */
    public long nextNanos() {
        return nextNanos;
    }

    @Override
    public void take(int of, List<SentFrame> more, List<DriverChange> drivers) {
        if (of != segment) {
            return;
        }
        for (SentFrame frame : more) {
            if (frames.size() < MOST_FRAMES) {
                frames.add(frame);
            } else if (count == MOST_FRAMES) {
                nextNanos = frame.startNanos();
            }
            count++;
        }
        if (count <= MOST_FRAMES) {
            changes.addAll(drivers);
        }
    }

    @Override
    public void reached(long horizonNanos) {}

    @Override
    public void close() throws IOException {
        Files.writeString(file, picture(), StandardCharsets.UTF_8);
    }

    private String picture() {
        String heading = pit.name() + ", segment " + talkers.segment().name() + ", "
                + talkers.segment().baud() + " baud " + talkers.format() + ", " + run;
        String left = count > frames.size()
                ? "The first " + frames.size() + " of " + count + " frames; the next begins at "
                        + FrameWords.seconds(nextNanos) + " s."
                : "";
        return new Picture(seen(), heading, left).svg();
    }

    private Seen seen() {
        long end = 0;
        for (SentFrame frame : frames) {
            long off = frame.driverOffNanos();
            end = Math.max(end, frame.endNanos());
            if (off != SentFrame.UNKNOWN && (count <= MOST_FRAMES || off < nextNanos)) {
                end = Math.max(end, off);
            }
        }
        Map<Integer, List<Span>> drivers = new TreeMap<>();
        Map<Integer, Long> since = new TreeMap<>();
        long until = end;
        for (DriverChange change : changes) {
            Long on =
                    change.on() ? since.putIfAbsent(change.talker(), change.atNanos()) : since.remove(change.talker());
            if (!change.on() && on != null && on < until) {
                add(drivers, change.talker(), new Span(on, Math.min(until, change.atNanos())));
            }
        }
        since.forEach((talker, on) -> {
            if (on < until) {
                add(drivers, talker, new Span(on, until));
            }
        });
        return new Seen(talkers, frames, drivers, end);
    }

    private static void add(Map<Integer, List<Span>> drivers, int talker, Span span) {
        drivers.computeIfAbsent(talker, t -> new ArrayList<>()).add(span);
    }
}
