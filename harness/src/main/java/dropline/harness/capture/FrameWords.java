package dropline.harness.capture;

import dropline.bus.trace.TraceSink;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A frame, and what became of it, in words. */
public final class FrameWords {
    private FrameWords() {}

    /** What it is: {@code request to oil-gauge}. */
    public static String what(SentFrame frame, Talkers talkers) {
        return switch (frame.kind()) {
            case TraceSink.REQUEST -> "request to " + talkers.name(frame.node());
            case TraceSink.REPLY ->
                frame.node() == frame.talker()
                        ? "reply of " + talkers.name(frame.talker())
                        : "reply of " + talkers.name(frame.talker()) + " in the name of " + talkers.name(frame.node());
            case TraceSink.BROADCAST -> "broadcast";
            default -> "characters of " + talkers.name(frame.talker()) + " that are no frame";
        };
    }

    /** What became of it: {@code clash with oil-gauge, timed out}. */
    public static String fate(SentFrame frame, Talkers talkers) {
        List<String> parts = new ArrayList<>();
        if (frame.clashed()) {
            parts.add("clash with " + names(frame.touched(), talkers));
        }
        if (!frame.misheard().isEmpty()) {
            parts.add("received wrong by " + names(frame.misheard(), talkers));
        }
        if (!frame.overrun().isEmpty()) {
            parts.add("lost in the buffers of " + names(frame.overrun(), talkers));
        }
        if (frame.tailTouched()) {
            parts.add("touched in its release tail");
        }
        boolean late = frame.kind() == TraceSink.REPLY && frame.fate() == SentFrame.Fate.TIMED_OUT;
        parts.add(late ? "not taken: timed out" : frame.fate().words());
        return String.join(", ", parts);
    }

    /** One or two names; of more, the first and how many others. */
    private static String names(List<Integer> talking, Talkers talkers) {
        String first = talkers.name(talking.get(0));
        return switch (talking.size()) {
            case 1 -> first;
            case 2 -> first + " and " + talkers.name(talking.get(1));
            default -> first + " and " + (talking.size() - 1) + " others";
        };
    }

    /** All of it: what it is, until when it lasted, what became of it. */
    static String of(SentFrame frame, Talkers talkers) {
        return what(frame, talkers) + ", ends at " + seconds(frame.endNanos()) + " s, " + fate(frame, talkers);
    }

    /** An instant in seconds, to the nanosecond. */
    public static String seconds(long nanos) {
        return String.format(Locale.ROOT, "%d.%09d", nanos / 1_000_000_000L, nanos % 1_000_000_000L);
    }
}
