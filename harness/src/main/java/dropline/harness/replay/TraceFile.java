package dropline.harness.replay;

import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A run's trace as a text file, written while it runs: a head that names what the numbers stand for, then one event a
 * line, the segments' events merged by (time, segment). The form is described in {@code docs/trace-format.md}.
 */
public final class TraceFile implements Closeable {
    /** Of a run in which everything was simulated. */
    static final String SIMULATED = "controller wire inside, all simulated";

    /** Of a run in which real boards answered. */
    public static final String OBSERVED = "controller observed, wire and inside inferred";

    /** Of a pair that was listened to. */
    public static final String OVERHEARD = "controller overheard, wire inferred, nothing of inside";

    private final OutputStream out;
    private final List<SegmentText> segments = new ArrayList<>();

    private TraceFile(OutputStream out, int segments) {
        this.out = out;
        for (int segment = 0; segment < segments; segment++) {
            this.segments.add(new SegmentText(segment));
        }
    }

    /**
     * Begins one.
     *
     * @param tiers which tiers of events it has, and whence: {@link #OBSERVED}
     */
    public static TraceFile create(Path file, Pit pit, long seed, String tiers) throws IOException {
        TraceFile trace = new TraceFile(
                new BufferedOutputStream(Files.newOutputStream(file), 1 << 16),
                pit.segments().size());
        trace.head(pit, seed, tiers);
        return trace;
    }

    /** Takes this segment's events. */
    public TraceSink segment(int segment) {
        return segments.get(segment);
    }

    /** Writes all events before which no other can come any more. No segment may be running meanwhile. */
    public void merge() throws IOException {
        SegmentText next = next();
        while (next != null) {
            next.take(out);
            next = next();
        }
        segments.forEach(SegmentText::compact);
    }

    @Override
    public void close() throws IOException {
        out.close();
    }

    /**
     * The segment with the earliest event, the first of equals; none while a segment may still bring an earlier one.
     */
    private @Nullable SegmentText next() {
        SegmentText earliest = null;
        for (SegmentText segment : segments) {
            if (!segment.waits()) {
                if (!segment.complete()) {
                    return null;
                }
            } else if (earliest == null || segment.nextNanos() < earliest.nextNanos()) {
                earliest = segment;
            }
        }
        return earliest;
    }

    private void head(Pit pit, long seed, String tiers) throws IOException {
        Layout layout = Layout.of(pit);
        line("# dropline trace 1");
        line("# pit " + quoted(pit.name()));
        line("# seed " + seed);
        line("# tiers " + tiers);
        for (int i = 0; i < pit.segments().size(); i++) {
            line("# segment " + i + " " + quoted(pit.segments().get(i).name()));
        }
        for (int i = 0; i < layout.nodes().size(); i++) {
            Layout.NodePlace place = layout.nodes().get(i);
            line("# node " + i + " " + place.segment() + " "
                    + quoted(place.node().name()));
        }
        for (int i = 0; i < pit.signals().size(); i++) {
            line("# signal " + i + " " + quoted(pit.signals().get(i).name()) + " "
                    + pit.signals().get(i).resolution());
        }
        for (int i = 0; i < layout.slots().size(); i++) {
            Layout.Slot slot = layout.slots().get(i);
            line("# slot " + i + " " + slot.node() + " " + slot.signal() + " "
                    + quoted(slot.panel().name()) + " "
                    + quoted(slot.indicator().name()));
        }
        for (int i = 0; i < layout.controls().size(); i++) {
            Layout.ControlPlace place = layout.controls().get(i);
            line("# control " + i + " " + place.node() + " "
                    + quoted(place.control().name()));
        }
    }

    private void line(String text) throws IOException {
        out.write(text.getBytes(StandardCharsets.UTF_8));
        out.write('\n');
    }

    /** A name in double quotes, on one line whatever stands in it. */
    static String quoted(String name) {
        StringBuilder text = new StringBuilder("\"");
        for (int i = 0; i < name.length(); i++) {
            char letter = name.charAt(i);
            if (letter == '"' || letter == '\\') {
                text.append('\\').append(letter);
            } else {
                text.append(letter < ' ' ? ' ' : letter);
            }
        }
        return text.append('"').toString();
    }
}
