package dropline.harness.timeline;

import java.util.ArrayList;
import java.util.List;

/** The whole drawing: heading, legend, rows, and the table that says every figure in full. */
final class Picture {
    private static final double MARGIN = 20;
    private static final double WIDTH = 1280;

    private final Seen seen;
    private final String heading;
    private final String left;

    /** @param left what was left out, or nothing */
    Picture(Seen seen, String heading, String left) {
        this.seen = seen;
        this.heading = heading;
        this.left = left;
    }

    String svg() {
        Svg body = new Svg();
        double width = WIDTH;
        double y = 34;
        body.words("h", "start", MARGIN, y, heading);
        body.words(
                "note",
                "start",
                MARGIN,
                y += 20,
                "Every frame that begins in the stretch. Of one under way when it begins, only the driver is shown.");
        if (!left.isEmpty()) {
            body.words("note", "start", MARGIN, y += 20, left);
        }
        if (seen.frames().isEmpty()) {
            body.words("note", "start", MARGIN, y += 24, "No frame begins in this stretch.");
        } else {
            y = Legend.draw(body, MARGIN, y + 14);
            Axis axis = new Axis(seen);
            List<Row> rows = Row.of(seen, axis, WIDTH - 2 * MARGIN - RowDrawing.ASIDE);
            for (Row row : rows) {
                width = Math.max(width, row.width() + 2 * MARGIN + RowDrawing.ASIDE);
            }
            for (Row row : rows) {
                y = new RowDrawing(seen, axis, row, body, MARGIN, y + 14, width - 2 * MARGIN).draw();
            }
            y = FrameTable.draw(body, seen, MARGIN, y + 26);
        }
        return document(body, width, y + MARGIN);
    }

    private static String document(Svg body, double width, double height) {
        String size = Svg.tenth(width) + " " + Svg.tenth(height);
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + size + "\" width=\"" + Svg.tenth(width)
                + "\" height=\"" + Svg.tenth(height) + "\">\n" + Style.SHEET
                + new Svg().rect("paper", 0, 0, width, height, 0) + body + "</svg>\n";
    }

    /** Where something is already written, so that nothing is written over it. */
    static final class Taken {
        private final List<double[]> spans = new ArrayList<>();

        boolean isFree(double from, double to) {
            return spans.stream().noneMatch(span -> from < span[1] && span[0] < to);
        }

        void take(double from, double to) {
            spans.add(new double[] {from, to});
        }
    }
}
