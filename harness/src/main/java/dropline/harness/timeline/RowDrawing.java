package dropline.harness.timeline;

import dropline.harness.capture.FrameWords;
import dropline.harness.capture.SentFrame;
import java.util.ArrayList;
import java.util.List;

/** Draws one row: lanes, drivers, frames, margins, collisions and the time below. */
final class RowDrawing {
    /** Room for names. */
    private static final double NAMES = 158;

    /** Room before the first edge, for its margin. */
    private static final double LEAD = 66;

    /** Room beside the time itself: names, the first margin, the last one. */
    static final double ASIDE = NAMES + LEAD + 70;

    private static final double LANE = 64;
    private static final double HEAD = 16;
    private static final double FOOT = 34;
    private static final double DRIVER = 46;

    private final Seen seen;
    private final Axis axis;
    private final Row row;
    private final Svg svg;
    private final double left;
    private final double top;
    private final double origin;
    private final double right;

    RowDrawing(Seen seen, Axis axis, Row row, Svg svg, double left, double top, double width) {
        this.seen = seen;
        this.axis = axis;
        this.row = row;
        this.svg = svg;
        this.left = left;
        this.top = top;
        origin = left + NAMES + LEAD - row.x();
        right = left + width;
    }

    /** Draws it; returns where it ends below. */
    double draw() {
        double bottom = top + HEAD + row.lanes().size() * LANE;
        svg.rect("card", left, top, right - left, bottom + FOOT - top, 3);
        svg.words("bold", "start", left + 8, top + 13, "from " + FrameWords.seconds(firstNanos()) + " s");
        for (int lane = 0; lane < row.lanes().size(); lane++) {
            lane(lane, top + HEAD + lane * LANE);
        }
        collisions(bottom);
        time(bottom);
        return bottom + FOOT;
    }

    private long firstNanos() {
        return row.span().from();
    }

    private double end() {
        return left + NAMES + LEAD + row.width();
    }

    private double x(long nanos) {
        return origin + axis.x(nanos);
    }

    private void lane(int lane, double y) {
        int talker = row.lanes().get(lane);
        String name = seen.talkers().name(talker);
        svg.open("g", "").title(name);
        svg.words("name", "start", left + 8, y + 27, Words.shortened(name, 17)).close("g");
        svg.words("", "end", left + NAMES - 6, y + 26, "data");
        svg.words("", "end", left + NAMES - 6, y + DRIVER + 6, "driver");
        svg.line("lane", left, y + LANE, right, y + LANE);
        svg.line("axis", left + NAMES, y + DRIVER + 2.5, end(), y + DRIVER + 2.5);
        Picture.Taken taken = new Picture.Taken();
        for (Span on : seen.driversOf(talker)) {
            if (on.touches(row.span())) {
                driver(on.common(row.span()), y, taken);
            }
        }
        List<Integer> mine = new ArrayList<>();
        for (int i = 0; i < seen.frames().size(); i++) {
            SentFrame frame = seen.frames().get(i);
            if (frame.talker() == talker && Seen.of(frame).touches(row.span())) {
                mine.add(i);
            }
        }
        for (int i = 0; i < mine.size(); i++) {
            SentFrame frame = seen.frames().get(mine.get(i));
            double room =
                    i + 1 < mine.size() ? x(seen.frames().get(mine.get(i + 1)).startNanos()) - 6 : right;
            new FrameDrawing(seen, axis, origin, svg, y).draw(frame, mine.get(i) + 1, room);
        }
        for (int index : mine) {
            margins(seen.frames().get(index), y, taken);
        }
    }

    private void driver(Span on, double y, Picture.Taken taken) {
        double from = x(on.from());
        double width = Math.max(1, x(on.until()) - from);
        svg.rect("driver", from, y + DRIVER, width, 5, 0);
        for (Axis.Piece piece : axis.pieces()) {
            if (piece.gap() && piece.span().touches(on)) {
                svg.path("break", Legend.fold(origin + piece.x() + piece.width() / 2, y + DRIVER + 2.5));
            }
        }
        taken.take(from - 2, from + width + 2);
    }

    private void margins(SentFrame frame, double y, Picture.Taken taken) {
        if (frame.driverOnNanos() != SentFrame.UNKNOWN) {
            double at = x(frame.driverOnNanos());
            margin(frame.leadNanos(), "end", at - 5, y, taken);
            edge(x(frame.startNanos()), y);
        }
        if (frame.driverOffNanos() != SentFrame.UNKNOWN
                && frame.driverOffNanos() <= row.span().until()) {
            margin(frame.tailNanos(), "start", x(frame.driverOffNanos()) + 5, y, taken);
            edge(x(frame.endNanos()), y);
        }
    }

    /** A margin in us and, below, in bit times; left to the table where there is no room. */
    private void margin(long nanos, String anchor, double x, double y, Picture.Taken taken) {
        String micros = Words.micros(nanos);
        String bits = Words.bits(seen.bits(nanos));
        double width = Math.max(Svg.width(micros, 10), Svg.width(bits, 10)) - 4;
        double from = anchor.equals("end") ? x - width : x;
        if (taken.isFree(from, from + width)) {
            taken.take(from, from + width);
            svg.words("ink", anchor, x, y + DRIVER - 1, micros);
            svg.words("ink", anchor, x, y + DRIVER + 13, bits);
        }
    }

    private void edge(double x, double y) {
        svg.line("edge", x, y + FrameDrawing.BOX + FrameDrawing.HEIGHT, x, y + DRIVER + 9);
    }

    private void collisions(double bottom) {
        for (Span clash : seen.collisions()) {
            if (clash.touches(row.span())) {
                Span part = clash.common(row.span());
                double from = x(part.from());
                double width = Math.max(3, x(part.until()) - from);
                svg.rect("band", from, top + HEAD, width, bottom - top - HEAD, 0);
                double middle = from + width / 2;
                svg.path("mark", "M" + Svg.tenth(middle - 4) + " " + Svg.tenth(top + 5) + "l8 8m-8 0l8 -8");
                svg.words("lost", "start", middle + 8, top + 13, "clash, " + Words.micros(clash.nanos()));
            }
        }
    }

    private void time(double bottom) {
        svg.line("axis", left + NAMES, bottom + 6, end(), bottom + 6);
        svg.words("", "end", left + NAMES - 6, bottom + 18, "us since then");
        svg.words("", "end", left + NAMES - 6, bottom + 30, "nothing changes for");
        double free = left + NAMES;
        for (SentFrame frame : seen.frames()) {
            if (frame.startNanos() >= row.span().from()
                    && frame.startNanos() < row.span().until()) {
                String words = Words.micros(frame.startNanos() - firstNanos()).replace(" us", "");
                double x = x(frame.startNanos());
                double width = Svg.width(words, 10);
                svg.line("axis", x, bottom + 3, x, bottom + 9);
                if (x - width / 2 >= free) {
                    svg.words("", "middle", x, bottom + 19, words);
                    free = x + width / 2 + 4;
                }
            }
        }
        for (Axis.Piece piece : axis.pieces()) {
            if (piece.gap() && piece.span().touches(row.span())) {
                double middle = origin + piece.x() + piece.width() / 2;
                svg.path("fold", Legend.fold(middle, bottom + 6));
                svg.words(
                        "",
                        "middle",
                        middle,
                        bottom + 30,
                        Words.micros(piece.span().nanos()));
            }
        }
    }
}
