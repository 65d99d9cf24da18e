package dropline.harness.verdict;

import dropline.bus.pit.Controller;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Profile;
import dropline.harness.measure.BusMeasure;
import dropline.harness.measure.Mishaps;
import java.util.ArrayList;
import java.util.List;

/**
 * Says why requests of a segment got no reply in time, and at which node to look. A frame lost in a buffer and a clash
 * are known causes and come first; only what they leave is put down to a slow reply.
 */
final class TimeOutAdvice {
    private final Layout layout;
    private final Controller controller;
    private final BusMeasure bus;
    private final Mishaps mishaps;

    TimeOutAdvice(Layout layout, Controller controller, BusMeasure bus) {
        this.layout = layout;
        this.controller = controller;
        this.bus = bus;
        this.mishaps = bus.mishaps();
    }

    String sentence() {
        List<String> sentences = new ArrayList<>();
        sentences.add(bus.timedOut() + " of " + (bus.asked() + bus.retried()) + " requests got no reply in time, "
                + Words.count(bus.gaveUp(), "transaction") + " given up.");
        if (bus.overruns() > 0) {
            sentences.add(overruns());
        }
        if (bus.clashes() > 0) {
            sentences.add(clashes());
        }
        // a clash can cost the node that was being asked its request, beside the one that talked
        if (mishaps.unexplained().sum() > bus.clashes()) {
            sentences.add(slow());
        }
        return String.join(" ", sentences);
    }

    private String overruns() {
        int most = mishaps.mostOverrun();
        Profile profile = node(most).profile();
        return Words.count(bus.overruns(), "frame") + " got lost in buffers, "
                + share(mishaps.overruns(most), bus.overruns()) + "at node "
                + node(most).name() + " ("
                + profile.ringChars() + " characters in the ring, " + profile.fifoChars()
                + " in the UART): shorten what blocks it" + Adviser.longestBlock(node(most)) + ".";
    }

    private String clashes() {
        int most = mishaps.mostClashing();
        return "Transmissions touched " + Words.count(bus.clashes(), "time") + ", "
                + share(mishaps.clashes(most), bus.clashes()) + "with node "
                + node(most).name()
                + " talking: raise the time-out (" + Words.time(controller.timeOutNanos())
                + ") above its slowest reply, shorten what blocks it" + Adviser.longestBlock(node(most))
                + ", or find who talks out of turn.";
    }

    private String slow() {
        int most = mishaps.mostSilent();
        boolean isAll = bus.overruns() + bus.clashes() == 0;
        long requests = mishaps.unexplained(most);
        return (isAll ? requests + " of them" : "Of the rest, " + Words.count(requests, "request"))
                + " went to node " + node(most).name()
                + ": see whether it answers, and whether it is slower than the time-out ("
                + Words.time(controller.timeOutNanos()) + ") allows. The slowest good reply on this segment came "
                + Words.time(Math.max(0, bus.gapMaxNanos())) + " after its request.";
    }

    private static String share(long part, long whole) {
        if (whole == 1) {
            return "";
        }
        return part == whole ? "all " : part + " of them ";
    }

    private Node node(int index) {
        return layout.nodes().get(index).node();
    }
}
