package dropline.harness.diff;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** Events of a trace in plain words. */
final class EventWords {
    private final TraceHead head;

    EventWords(TraceHead head) {
        this.head = head;
    }

    /** An instant in seconds, to the nanosecond. */
    static String seconds(long nanos) {
        return BigDecimal.valueOf(nanos, 9).toPlainString() + " s";
    }

    /** A segment's name. */
    String segment(TraceLine line) {
        return head.name("segment", line.segment());
    }

    /** What happens. */
    String of(TraceLine line) {
        String words = known(line);
        return words == null ? line.event() + " " + line.rest() : words;
    }

    private @Nullable String known(TraceLine line) {
        String frames = frames(line);
        return frames != null ? frames : others(line);
    }

    private @Nullable String frames(TraceLine line) {
        return switch (line.event()) {
            case "frame-started" -> frame(line) + " begins, " + line.number(4) + " characters";
            case "frame-ended" -> frame(line) + " ends";
            case "answered" ->
                node(line, 0) + " has answered" + poll(line, 1) + ", attempt " + line.number(2) + ", gap "
                        + micros(line.number(3));
            case "timed-out" ->
                node(line, 0) + " has not answered in time" + poll(line, 1) + ", attempt " + line.number(2);
            case "gave-up" -> "the controller gives up on " + node(line, 0) + poll(line, 1);
            case "backed-off" -> node(line, 0) + " is left alone until " + seconds(line.number(1));
            case "cycle-started" -> "round " + line.number(0) + " of polls begins";
            case "driver-on" -> "the driver of " + talker(line, 0) + " is enabled";
            case "driver-off" -> "the driver of " + talker(line, 0) + " lets go";
            case "clash" -> talker(line, 0) + " and " + talker(line, 1) + " are on the pair at once";
            case "received-wrong" ->
                talker(line, 0) + " does not receive what " + talker(line, 1) + " sent" + poll(line, 2);
            case "phantom" -> talker(line, 0) + " gets " + line.number(1) + " characters that nobody sent";
            case "overrun" -> node(line, 0) + " loses a frame in its buffers" + poll(line, 1);
            case "reset" -> node(line, 0) + " restarts, silent until " + seconds(line.number(1));
            case "node-status" ->
                node(line, 0) + " reports " + line.number(1) + " restarts, " + line.number(2)
                        + " frames received wrong, longest loop " + micros(line.number(3)) + ", " + line.number(4)
                        + " refreshes";
            default -> null;
        };
    }

    private @Nullable String others(TraceLine line) {
        return switch (line.event()) {
            case "state-changed" -> signal(line, 0) + " changes to " + line.number(2) + change(line, 1);
            case "state-sent" -> "the host sends its state";
            case "queued" -> signal(line, 1) + " is queued for " + destination(line) + change(line, 2);
            case "coalesced" ->
                "a newer " + signal(line, 1) + " replaces the one for " + destination(line) + change(line, 2);
            case "carried" -> "the frame carries " + signal(line, 1) + " for " + destination(line) + change(line, 2);
            case "told" -> "the host is told of " + control(line) + move(line, 1);
            case "applied" -> slot(line) + " is given its value" + change(line, 1);
            case "shown" -> slot(line) + " shows its value" + change(line, 1);
            case "moved" ->
                slot(line) + " moves from " + line.number(1) + " to " + line.number(3) + " until "
                        + seconds(line.number(2));
            case "control-moved" -> control(line) + " is moved to " + line.number(2) + move(line, 1);
            case "sampled" -> control(line) + " is believed" + move(line, 1);
            case "ended" -> "the segment's trace ends";
            default -> null;
        };
    }

    private String frame(TraceLine line) {
        long talker = line.number(0);
        String poll = " (transaction " + line.number(3) + ")";
        return switch ((int) line.number(1)) {
            case 0 -> "a request to " + node(line, 2) + poll;
            case 1 ->
                "a reply of " + talker(line, 0) + (talker == line.number(2) ? "" : " in the name of " + node(line, 2))
                        + poll;
            case 2 -> "broadcast " + line.number(3);
            default -> "a burst of characters of " + talker(line, 0);
        };
    }

    private static String poll(TraceLine line, int index) {
        return " (transaction " + line.number(index) + ")";
    }

    private static String change(TraceLine line, int index) {
        return " (change " + line.number(index) + ")";
    }

    private static String move(TraceLine line, int index) {
        return " (move " + line.number(index) + ")";
    }

    private static String micros(long nanos) {
        return BigDecimal.valueOf(nanos, 3).toPlainString() + " us";
    }

    private String node(TraceLine line, int index) {
        return head.name("node", line.number(index));
    }

    private String talker(TraceLine line, int index) {
        return line.number(index) < 0 ? "the controller" : node(line, index);
    }

    private String destination(TraceLine line) {
        return line.number(0) < 0 ? "all" : node(line, 0);
    }

    private String signal(TraceLine line, int index) {
        return head.name("signal", line.number(index));
    }

    private String slot(TraceLine line) {
        return head.name("slot", line.number(0));
    }

    private String control(TraceLine line) {
        return head.name("control", line.number(0));
    }
}
