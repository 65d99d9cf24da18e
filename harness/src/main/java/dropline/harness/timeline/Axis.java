package dropline.harness.timeline;

import dropline.harness.capture.SentFrame;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Where an instant is drawn. What is driven is to scale; a stretch in which nobody drives, or nothing changes for long,
 * is drawn at a fixed width, as a gap with room for the margins beside it, and its length is written.
 */
final class Axis {
    /** Width of a gap. */
    static final double GAP = 130;

    private static final double WIDEST_FRAME = 820;
    private static final double MOST_A_BIT = 1.45;
    private static final double LEAST_A_BIT = 0.2;

    /** A piece of the axis; {@code gap} if it is not to scale. */
    record Piece(Span span, double x, double width, boolean gap) {}

    private final List<Piece> pieces = new ArrayList<>();
    private final double nanosPerPixel;

    Axis(Seen seen) {
        long longest = 1;
        for (SentFrame frame : seen.frames()) {
            longest = Math.max(longest, Seen.of(frame).nanos());
        }
        double bit = Math.min(MOST_A_BIT, Math.max(LEAST_A_BIT, WIDEST_FRAME / seen.bits(longest)));
        nanosPerPixel = 1e9 / seen.talkers().segment().baud() / bit;
        double x = 0;
        long before = Long.MIN_VALUE;
        for (long at : marks(seen)) {
            if (before != Long.MIN_VALUE) {
                Span span = new Span(before, at);
                double width = span.nanos() / nanosPerPixel;
                boolean sent = seen.frames().stream().anyMatch(f -> Seen.of(f).touches(span));
                boolean gap = !sent && (width > GAP || seen.isQuiet(span));
                pieces.add(new Piece(span, x, gap ? GAP : width, gap));
                x += gap ? GAP : width;
            }
            before = at;
        }
    }

    List<Piece> pieces() {
        return List.copyOf(pieces);
    }

    /** Where an instant lies; instants outside lie at the ends. */
    double x(long nanos) {
        Piece last = pieces.get(pieces.size() - 1);
        for (Piece piece : pieces) {
            if (nanos <= piece.span().until()) {
                long since = Math.max(0, nanos - piece.span().from());
                return piece.x()
                        + piece.width() * since / Math.max(1, piece.span().nanos());
            }
        }
        return last.x() + last.width();
    }

    private static TreeSet<Long> marks(Seen seen) {
        TreeSet<Long> marks = new TreeSet<>();
        for (SentFrame frame : seen.frames()) {
            marks.add(frame.startNanos());
            marks.add(frame.endNanos());
        }
        for (int talker : seen.talkers().indices()) {
            for (Span on : seen.driversOf(talker)) {
                marks.add(on.from());
                marks.add(on.until());
            }
        }
        marks.add(seen.untilNanos());
        return marks;
    }
}
