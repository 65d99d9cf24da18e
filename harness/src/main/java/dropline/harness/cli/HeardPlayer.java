package dropline.harness.cli;

import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.harness.capture.Captures;
import dropline.harness.capture.SegmentCapture;
import dropline.harness.link.Arrival;
import dropline.harness.listen.Listening;
import dropline.harness.listen.Overheard;
import dropline.harness.listen.Source;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Plays what was heard on a segment.
 *
 * @param pit of that segment only
 * @param wire which of an analyser's wires; null where it has only one
 */
record HeardPlayer(Pit pit, Path file, @Nullable String wire) implements TraceSession.Player {
    @Override
    public long play(Captures captures) throws IOException {
        Segment segment = pit.segments().get(0);
        SegmentCapture capture = captures.watchers().get(0);
        Overheard overheard = new Overheard(pit, capture);
        capture.follow(talker -> overheard.bytes());
        Listening listening = new Listening(pit, 0, List.of(overheard));
        try (Source source = Source.open(file, wire, segment.baud(), segment.format())) {
            for (Arrival.Received next = source.next(); next != null; next = source.next()) {
                listening.take(next);
                captures.stretchEnded(overheard.reachedNanos());
            }
        } catch (IOException wrong) {
            throw new WrongInput("dropline: " + wrong.getMessage(), wrong);
        }
        listening.end();
        captures.stretchEnded(overheard.reachedNanos());
        return overheard.reachedNanos();
    }
}
