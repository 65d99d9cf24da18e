package dropline.harness.timeline;

import dropline.bus.trace.TraceSink;
import dropline.harness.capture.SentFrame;
import java.util.ArrayList;
import java.util.List;

/**
 * A row of the drawing: a stretch of time, and a lane for each talker who has something to show in it.
 *
 * @param span the stretch
 * @param x where it begins on the axis
 * @param width of it
 * @param lanes talkers, the controller first
 */
record Row(Span span, double x, double width, List<Integer> lanes) {
    Row {
        lanes = List.copyOf(lanes);
    }

    /** Cuts the axis into rows about so wide, at gaps, best before a frame of the controller. */
    static List<Row> of(Seen seen, Axis axis, double widest) {
        List<Row> rows = new ArrayList<>();
        List<Axis.Piece> pieces = axis.pieces();
        int first = 0;
        int best = -1;
        boolean bestIsController = false;
        for (int i = 0; i < pieces.size(); i++) {
            double width = end(pieces.get(i)) - pieces.get(first).x();
            if (width > widest && best >= first) {
                rows.add(row(seen, pieces, first, best));
                first = best + 1;
                best = -1;
                bestIsController = false;
                i = first - 1;
                continue;
            }
            if (pieces.get(i).gap() && i > first) {
                boolean controller = nextTalker(seen, pieces.get(i).span().until()) == TraceSink.CONTROLLER;
                if (controller || !bestIsController) {
                    best = i;
                    bestIsController = controller;
                }
            }
        }
        rows.add(row(seen, pieces, first, pieces.size() - 1));
        return rows;
    }

    private static double end(Axis.Piece piece) {
        return piece.x() + piece.width();
    }

    private static Row row(Seen seen, List<Axis.Piece> pieces, int first, int last) {
        Span span = new Span(
                pieces.get(first).span().from(), pieces.get(last).span().until());
        List<Integer> lanes = new ArrayList<>();
        for (int talker : seen.talkers().indices()) {
            boolean talks = seen.frames().stream()
                    .anyMatch(f -> f.talker() == talker && Seen.of(f).touches(span));
            if (talker == TraceSink.CONTROLLER
                    || talks
                    || seen.driversOf(talker).stream().anyMatch(span::touches)) {
                lanes.add(talker);
            }
        }
        double x = pieces.get(first).x();
        return new Row(span, x, end(pieces.get(last)) - x, lanes);
    }

    private static int nextTalker(Seen seen, long fromNanos) {
        for (SentFrame frame : seen.frames()) {
            if (frame.endNanos() > fromNanos) {
                return frame.talker();
            }
        }
        return Integer.MAX_VALUE;
    }
}
