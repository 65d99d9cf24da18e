package dropline.harness.timeline;

import dropline.harness.capture.SentFrame;
import dropline.harness.capture.Talkers;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * What is drawn.
 *
 * @param talkers who may talk
 * @param frames in the order of their start
 * @param drivers for each talker, when its driver was on
 * @param untilNanos the drawing ends here, ns
 */
record Seen(Talkers talkers, List<SentFrame> frames, Map<Integer, List<Span>> drivers, long untilNanos) {
    Seen {
        frames = List.copyOf(frames);
        drivers = Map.copyOf(drivers);
    }

    List<Span> driversOf(int talker) {
        return drivers.getOrDefault(talker, List.of());
    }

    /** From a frame's first start bit to its last stop bit. */
    static Span of(SentFrame frame) {
        return new Span(frame.startNanos(), frame.endNanos());
    }

    /** How many bit times of the segment a stretch lasts. */
    double bits(long nanos) {
        return (double) nanos * talkers.segment().baud() / 1e9;
    }

    /** Whether no driver is on. */
    boolean isQuiet(Span span) {
        return drivers.values().stream().flatMap(List::stream).noneMatch(span::touches);
    }

    /** Where two drivers were on at once, in order. */
    List<Span> collisions() {
        List<Span> found = new ArrayList<>();
        List<Integer> all = talkers.indices();
        for (int a = 0; a < all.size(); a++) {
            for (int b = a + 1; b < all.size(); b++) {
                for (Span one : driversOf(all.get(a))) {
                    driversOf(all.get(b)).stream()
                            .filter(one::touches)
                            .map(one::common)
                            .forEach(found::add);
                }
            }
        }
        found.sort((x, y) -> Long.compare(x.from(), y.from()));
        return found;
    }
}
