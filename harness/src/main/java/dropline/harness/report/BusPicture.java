package dropline.harness.report;

import dropline.harness.verdict.BusFrame;
import dropline.harness.verdict.PanelResult;
import dropline.harness.verdict.WorstMoment;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Who talked when on a segment around a panel's slowest update: a lane for each talker.
 *
 * @param panel the panel's result
 * @param worst its slowest update
 * @param lanes from the top: the controller, the panel's own node, then the others as they come
 * @param boxes the frames
 * @param changed where the change was, or the drawing begins
 * @param shown where the panel showed it
 * @param begins what the line at the left means
 * @param axis marks in time since then
 * @param summary what happened, in a sentence
 */
public record BusPicture(
        PanelResult panel,
        WorstMoment worst,
        List<Lane> lanes,
        List<Box> boxes,
        double changed,
        double shown,
        String begins,
        List<Tick> axis,
        String summary) {
    /** Width of the lanes. */
    public static final double WIDTH = 760;

    /** Room for names at the left. */
    public static final double NAMES = 150;

    /** From lane to lane. */
    public static final double STEP = 20;

    private static final int MOST_LANES = 16;
    private static final int MOST_LETTERS = 22;

    /** A talker's lane; {@code own} for the node of the panel. */
    public record Lane(String name, String fullName, double y, boolean own) {}

    /** A frame; {@code style} is its class in the style sheet. */
    public record Box(double x, double y, double width, String style, String title) {}

    public BusPicture {
        lanes = List.copyOf(lanes);
        boxes = List.copyOf(boxes);
        axis = List.copyOf(axis);
    }

    static BusPicture of(PanelResult panel, WorstMoment worst) {
        Map<String, Integer> order = order(panel, worst);
        List<Lane> lanes = new ArrayList<>();
        for (Map.Entry<String, Integer> talker : order.entrySet()) {
            if (talker.getValue() == lanes.size()) {
                boolean last = lanes.size() == MOST_LANES - 1 && order.size() > MOST_LANES;
                String name = last ? "other nodes" : talker.getKey();
                lanes.add(new Lane(shortened(name), name, STEP * lanes.size(), name.equals(panel.node())));
            }
        }
        long first = worst.frames().get(0).startNanos();
        long until = Math.max(worst.untilNanos(), worst.shownNanos());
        boolean cut = first - worst.changedNanos() > (until - worst.changedNanos()) / 10;
        long from = cut ? first : Math.min(first, worst.changedNanos());
        long origin = cut ? first : worst.changedNanos();
        Scale scale = new Scale(from - (until - from) / 100, until + (until - from) / 100);
        List<Box> boxes = new ArrayList<>();
        for (BusFrame frame : worst.frames()) {
            boxes.add(box(frame, order.getOrDefault(frame.talker(), 0), scale, worst.changedNanos()));
        }
        double zero = scale.x(origin);
        List<Tick> axis = Tick.along(Math.max(1, scale.until - origin), WIDTH - zero, 8).stream()
                .map(tick -> new Tick(tenth(tick.at() + zero), tick.text()))
                .toList();
        String begins =
                cut ? "drawn from " + Figures.time(first - worst.changedNanos()) + " after the change on" : "changed";
        return new BusPicture(
                panel, worst, lanes, boxes, zero, scale.x(worst.shownNanos()), begins, axis, summary(panel, worst));
    }

    /** Height of the lanes. */
    public double height() {
        return lanes.size() * STEP;
    }

    private static Map<String, Integer> order(PanelResult panel, WorstMoment worst) {
        Map<String, Integer> order = new LinkedHashMap<>();
        order.put("controller", 0);
        order.put(panel.node(), 1);
        for (BusFrame frame : worst.frames()) {
            order.putIfAbsent(frame.talker(), Math.min(order.size(), MOST_LANES - 1));
        }
        return order;
    }

    private static Box box(BusFrame frame, int lane, Scale scale, long originNanos) {
        double x = scale.x(frame.startNanos());
        double width = Math.max(1.2, tenth(scale.x(frame.endNanos()) - x));
        String kind =
                switch (frame.kind()) {
                    case REQUEST -> "request";
                    case REPLY -> "reply";
                    case BROADCAST -> "broadcast";
                };
        String words =
                switch (frame.kind()) {
                    case REQUEST -> "request to " + frame.node();
                    case REPLY -> "reply of " + frame.node();
                    case BROADCAST -> "broadcast";
                };
        String title = words + (frame.clashed() ? ", clashed" : "") + ", "
                + Figures.margin(frame.startNanos() - originNanos) + " for "
                + Figures.time(frame.endNanos() - frame.startNanos());
        return new Box(x, lane * STEP, width, frame.clashed() ? "clashed" : kind, title);
    }

    private static String summary(PanelResult panel, WorstMoment worst) {
        StringBuilder text = new StringBuilder();
        text.append("At ")
                .append(Figures.instant(worst.changedNanos()))
                .append(' ')
                .append(worst.signal());
        text.append(" changed; ").append(worst.indicator()).append(" showed it ");
        text.append(Figures.time(worst.latencyNanos())).append(" later, against a limit of ");
        text.append(Figures.time(panel.budgetNanos())).append(". Longest part: ");
        text.append(worst.stages().longest().words()).append(", ");
        text.append(Figures.time(worst.stages().nanos(worst.stages().longest())))
                .append(". In that time ");
        text.append(Figures.plural(worst.timesCarried(), "frame")).append(" carried it, ");
        text.append(panel.node()).append(" had ").append(Figures.plural(worst.timeOuts(), "time-out"));
        text.append(" and lost ").append(Figures.plural(worst.overruns(), "frame"));
        text.append(" in its buffers, and there ").append(worst.clashes() == 1 ? "was " : "were ");
        return text.append(worst.clashes() == 1 ? "1 clash." : Figures.count(worst.clashes()) + " clashes.")
                .toString();
    }

    private static String shortened(String name) {
        return name.length() <= MOST_LETTERS ? name : name.substring(0, MOST_LETTERS - 2) + "..";
    }

    private static double tenth(double value) {
        return Math.round(value * 10) / 10.0;
    }

    /** Turns instants into places. */
    private static final class Scale {
        private final long from;
        private final long until;

        Scale(long from, long until) {
            this.from = from;
            this.until = Math.max(from + 1, until);
        }

        double x(long nanos) {
            return tenth(WIDTH * (nanos - from) / (until - from));
        }
    }
}
