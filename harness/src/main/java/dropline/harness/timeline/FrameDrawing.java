package dropline.harness.timeline;

import dropline.bus.trace.TraceSink;
import dropline.harness.capture.FrameWords;
import dropline.harness.capture.SentFrame;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Draws one frame in its lane: its kind by shape, its bytes, what of it was lost. */
final class FrameDrawing {
    static final double BOX = 14;
    static final double HEIGHT = 17;
    private static final double HEX = 13.5;

    private final Seen seen;
    private final Axis axis;
    private final double origin;
    private final Svg svg;
    private final double y;

    FrameDrawing(Seen seen, Axis axis, double origin, Svg svg, double y) {
        this.seen = seen;
        this.axis = axis;
        this.origin = origin;
        this.svg = svg;
        this.y = y;
    }

    /** @param room where its words must end */
    void draw(SentFrame frame, int number, double room) {
        double from = x(frame.startNanos());
        double width = Math.max(3, x(frame.endNanos()) - from);
        svg.open("g", "");
        svg.title(number + " " + FrameWords.what(frame, seen.talkers()) + ": " + frame.bytes() + "; "
                + FrameWords.fate(frame, seen.talkers()));
        String style = style(frame);
        svg.rect(style, from, y + BOX, width, HEIGHT, frame.kind() == TraceSink.REPLY ? 8 : 0);
        if (frame.kind() == TraceSink.BROADCAST) {
            svg.rect("double", from - 2.5, y + BOX - 2.5, width + 5, HEIGHT + 5, 0);
        }
        bytes(frame, from, width);
        lost(frame);
        if (frame.lost()) {
            svg.path("sign", Legend.sign(from + width + 13, y + BOX + 8));
            svg.words("lost", "middle", from + width + 13, y + BOX + 11.5, "!");
        }
        heading(frame, number, from, Math.max(room - from, 0));
        svg.close("g");
    }

    private double x(long nanos) {
        return origin + axis.x(nanos);
    }

    private static String style(SentFrame frame) {
        return switch (frame.kind()) {
            case TraceSink.REQUEST -> "request";
            case TraceSink.REPLY -> "reply";
            case TraceSink.BROADCAST -> "broadcast";
            default -> "other";
        };
    }

    private void heading(SentFrame frame, int number, double x, double room) {
        String what = FrameWords.what(frame, seen.talkers());
        String kind = what.split(" ", 2)[0];
        boolean lost = frame.clashed() || frame.fate() == SentFrame.Fate.TIMED_OUT;
        String late = frame.kind() == TraceSink.REPLY ? ", not taken" : ", timed out";
        String fate = frame.clashed() ? ", clash" : lost ? late : "";
        List<String> longestFirst =
                List.of(number + "  " + what + fate, number + "  " + kind + fate, number + "  " + kind, "" + number);
        for (String words : longestFirst) {
            if (Svg.width(words, 10) < room || words.length() < 3) {
                svg.words(lost ? "lost" : "ink", "start", x, y + BOX - 4, words);
                return;
            }
        }
    }

    private void bytes(SentFrame frame, double from, double width) {
        int length = frame.bytes().length();
        double each = width / length;
        if (each >= HEX) {
            for (int i = 0; i < length; i++) {
                if (i > 0) {
                    svg.line("split", from + i * each, y + BOX + 1, from + i * each, y + BOX + HEIGHT - 1);
                }
                String hex = String.format(Locale.ROOT, "%02X", frame.bytes().at(i));
                svg.words("hex", "middle", from + (i + 0.5) * each, y + BOX + 12, hex);
            }
        } else {
            String words = length + " bytes";
            if (Svg.width(words, 10) < width) {
                svg.words("ink", "middle", from + width / 2, y + BOX + 12, words);
            }
        }
    }

    /** Bytes that another driver touched, and bytes that left while its own driver was off. */
    private void lost(SentFrame frame) {
        for (Span clash : clashes(frame)) {
            over("clash", "lost", clash);
        }
        Span whole = Seen.of(frame);
        if (frame.driverOnNanos() == SentFrame.UNKNOWN) {
            over("cut", "cut", whole);
            return;
        }
        if (frame.driverOnNanos() > whole.from()) {
            over("cut", "cut", new Span(whole.from(), Math.min(frame.driverOnNanos(), whole.until())));
        }
        if (frame.driverOffNanos() != SentFrame.UNKNOWN && frame.driverOffNanos() < whole.until()) {
            over("cut", "cut", new Span(Math.max(whole.from(), frame.driverOffNanos()), whole.until()));
        }
    }

    private List<Span> clashes(SentFrame frame) {
        List<Span> found = new ArrayList<>();
        for (int other : seen.talkers().indices()) {
            if (other != frame.talker()) {
                seen.driversOf(other).stream()
                        .filter(Seen.of(frame)::touches)
                        .map(Seen.of(frame)::common)
                        .forEach(found::add);
            }
        }
        return found;
    }

    private void over(String style, String word, Span part) {
        double from = x(part.from());
        double width = Math.max(3, x(part.until()) - from);
        svg.rect(style, from, y + BOX, width, HEIGHT, 0);
        if (width > Svg.width(word, 10) + 6) {
            svg.rect("paper", from + width / 2 - 13, y + BOX + 3, 26, 11, 2);
            svg.words("lost", "middle", from + width / 2, y + BOX + 12, word);
        }
    }
}
