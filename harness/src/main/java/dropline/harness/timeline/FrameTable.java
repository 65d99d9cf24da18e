package dropline.harness.timeline;

import dropline.harness.capture.FrameWords;
import dropline.harness.capture.SentFrame;
import java.util.List;

/** Every frame in a line, with all its figures. */
final class FrameTable {
    private static final double LINE = 17;
    private static final double[] AT = {0, 28, 130, 346, 388, 506, 640, 774};
    private static final List<String> HEADS = List.of(
            "no.", "starts at (s)", "what", "bytes", "enable lead", "release tail", "gap before", "what became of it");
    private static final int MOST_OF_A_FATE = 72;
    private static final int MOST_OF_A_NAME = 36;

    private FrameTable() {}

    /** Draws it; returns where it ends below. */
    static double draw(Svg svg, Seen seen, double left, double top) {
        for (int column = 0; column < AT.length; column++) {
            svg.words("head", "start", left + AT[column], top, HEADS.get(column));
        }
        svg.line("axis", left, top + 5, left + 1240, top + 5);
        double y = top + 5;
        long before = SentFrame.UNKNOWN;
        for (int i = 0; i < seen.frames().size(); i++) {
            y += LINE;
            SentFrame frame = seen.frames().get(i);
            line(svg, seen, i, before, left, y - 4);
            svg.line("lane", left, y + 1, left + 1240, y + 1);
            before = Math.max(before, frame.endNanos());
        }
        return y + 4;
    }

    private static void line(Svg svg, Seen seen, int index, long before, double left, double y) {
        SentFrame frame = seen.frames().get(index);
        String what = FrameWords.what(frame, seen.talkers());
        String fate = FrameWords.fate(frame, seen.talkers());
        String[] cells = {
            Integer.toString(index + 1),
            FrameWords.seconds(frame.startNanos()),
            Words.shortened(what, MOST_OF_A_NAME),
            Integer.toString(frame.bytes().length()),
            margin(seen, frame.driverOnNanos(), frame.startNanos(), "driver never on"),
            frame.driverOffNanos() == SentFrame.UNKNOWN
                    ? "driver held on"
                    : margin(seen, frame.endNanos(), frame.driverOffNanos(), ""),
            margin(seen, before, frame.startNanos(), ""),
            Words.shortened(fate, MOST_OF_A_FATE)
        };
        boolean lost = frame.clashed() || frame.lost() || frame.fate() == SentFrame.Fate.TIMED_OUT;
        svg.open("g", "").title(what + ": " + frame.bytes() + "; " + fate);
        for (int column = 0; column < cells.length; column++) {
            boolean marked = lost && column == cells.length - 1;
            svg.words(marked ? "cell lost" : "cell", "start", left + AT[column], y, cells[column]);
        }
        svg.close("g");
    }

    private static String margin(Seen seen, long from, long to, String unknown) {
        if (from == SentFrame.UNKNOWN || to == SentFrame.UNKNOWN) {
            return unknown;
        }
        return Words.micros(to - from) + ", " + Words.bits(seen.bits(to - from));
    }
}
