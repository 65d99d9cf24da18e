package dropline.harness.listen;

import dropline.harness.verdict.Words;
import java.util.Locale;

/** What was heard, in plain sentences and a table that fits a terminal. */
public final class ListenText {
    private ListenText() {}

    /**
     * @param throughAnAdapter whether an adapter's delays are in the times
     * @param ofPit whether a pit file says who is there; else those that were heard are all there is
     */
    public static String of(Listening heard, boolean throughAnAdapter, boolean ofPit) {
        StringBuilder text = new StringBuilder();
        if (heard.bytes() == 0) {
            return "Nothing was heard. Is the pair connected (A and B), is the baud rate right, does somebody poll?\n";
        }
        text.append("Heard ")
                .append(heard.bytes())
                .append(" bytes in ")
                .append(Words.time(heard.spanNanos()))
                .append("; ")
                .append(Words.share((double) heard.unsound() / heard.bytes()))
                .append(" of them are part of no sound frame.\n");
        text.append(Words.count(heard.broadcasts(), "frame"))
                .append(" for all, ")
                .append(Words.count(heard.strayReplies(), "reply").replace("replys", "replies"))
                .append(" of somebody who was not asked");
        text.append(heard.overrun() > 0 ? ", " + heard.overrun() + " bytes lost on this side.\n" : ".\n");
        text.append(String.format(
                Locale.ROOT,
                "%n  %-7s %-22s %8s %9s %9s %9s %9s %9s %8s%n".replace("%n", "\n"),
                "address",
                "board",
                "asked",
                "answered",
                "least gap",
                "mean gap",
                "most gap",
                "every",
                "restarts"));
        heard.nodes().stream()
                .filter(node -> ofPit || node.asked() > 0 || node.answered() > 0)
                .forEach(node -> text.append(line(node, name(node, ofPit))));
        heard.nodes().stream()
                .filter(node -> node.displayStops() > 0)
                .forEach(node -> text.append("The display of ")
                        .append(node.name().isEmpty() ? "address " + node.address() : node.name())
                        .append(" came to a stop ")
                        .append(Words.count(node.displayStops(), "time"))
                        .append(".\n"));
        if (throughAnAdapter) {
            text.append("Gaps and times are this computer's: what the adapter adds is in them.\n");
        }
        return text.toString();
    }

    private static String name(NodeTally node, boolean ofPit) {
        if (!ofPit) {
            return "";
        }
        return node.name().isEmpty() ? "(not in the pit file)" : node.name();
    }

    private static String line(NodeTally node, String name) {
        return String.format(
                Locale.ROOT,
                "  %-7d %-22s %8d %9s %9s %9s %9s %9s %8s\n",
                node.address(),
                name,
                node.asked(),
                node.asked() == 0 ? "-" : Words.share((double) node.answered() / node.asked()),
                time(node, node.leastGapNanos()),
                time(node, node.meanGapNanos()),
                time(node, node.mostGapNanos()),
                node.asked() < 2 ? "-" : Words.time(node.meanRoundNanos()),
                node.restarts() < 0 ? "-" : String.valueOf(node.restarts()));
    }

    private static String time(NodeTally node, long nanos) {
        return node.answered() == 0 ? "-" : Words.time(Math.max(0, nanos));
    }
}
