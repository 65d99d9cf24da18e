package dropline.harness.verdict;

import dropline.bus.pit.Controller;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Segment;
import dropline.harness.measure.SegmentMeasures;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Says what to do about what missed its limit: from the stage that took longest at a panel's worst moment, and from the
 * pit's own figures for that stage.
 */
final class Adviser {
    private final Pit pit;
    private final Layout layout;
    private final Map<String, Layout.NodePlace> nodes = new LinkedHashMap<>();

    Adviser(Pit pit, Layout layout) {
        this.pit = pit;
        this.layout = layout;
        layout.nodes().forEach(place -> nodes.put(place.node().name(), place));
    }

    /** {@code wires} are the measures that {@code segments} come from. */
    List<Advice> advise(
            List<PanelResult> panels,
            List<ControlResult> controls,
            List<SegmentResult> segments,
            List<SegmentMeasures> wires) {
        Map<String, SegmentResult> byName = new LinkedHashMap<>();
        segments.forEach(segment -> byName.put(segment.segment(), segment));
        List<Advice> advice = new ArrayList<>();
        for (PanelResult panel : panels) {
            if (panel.verdict().outcome() == Outcome.FAIL) {
                SegmentResult segment = Objects.requireNonNull(byName.get(panel.segment()));
                advice.add(new Advice(panel.panel(), onPanel(panel, segment)));
            }
        }
        for (ControlResult control : controls) {
            if (control.verdict().outcome() == Outcome.FAIL) {
                SegmentResult segment = Objects.requireNonNull(byName.get(control.segment()));
                advice.add(new Advice(control.control(), onControl(control, segment)));
            }
        }
        for (SegmentMeasures measures : wires) {
            Segment segment = pit.segments().get(measures.segment());
            if (measures.bus().timedOut() > 0) {
                TimeOutAdvice onTimeOuts = new TimeOutAdvice(layout, segment.controller(), measures.bus());
                advice.add(new Advice(segment.name(), onTimeOuts.sentence()));
            }
        }
        return advice;
    }

    private String onPanel(PanelResult panel, SegmentResult segment) {
        WorstMoment worst = panel.worst();
        if (worst == null || panel.verdict().valueNanos() > worst.latencyNanos()) {
            long lost = panel.signals().stream().mapToLong(SignalResult::lost).sum();
            return "It had not shown " + Words.count(lost, "change") + " by the end. Look whether node "
                    + panel.node() + " is heard on segment " + panel.segment() + " at all: there "
                    + Words.count(segment.gaveUp(), "transaction") + " of " + segment.asked() + " got no reply and "
                    + Words.count(segment.overruns(), "frame") + " got lost in buffers.";
        }
        Stage stage = worst.stages().longest();
        String start = "Of the slowest update's " + Words.time(worst.latencyNanos()) + ", "
                + Words.time(worst.stages().nanos(stage)) + " went ";
        return start
                + switch (stage) {
                    case HOST -> host();
                    case ADAPTER -> adapter(panel);
                    case QUEUE -> queue(panel, worst, segment);
                    case WIRE -> wire(panel, segment);
                    case NODE_WAIT -> nodeWait(panel);
                    case DEVICE -> device(panel, worst);
                };
    }

    private String host() {
        String period = pit.statePeriodNanos() > 0
                ? " It sends one every " + Words.time(pit.statePeriodNanos()) + "; send more often."
                : " It sends one for every row of the recording; send more often.";
        return "by before the host sent its next state." + period;
    }

    private String adapter(PanelResult panel) {
        Controller controller = segment(panel).controller();
        return "into the USB adapter " + controller.adapter().name() + " (frame "
                + Words.time(controller.adapter().frameNanos()) + ", wake-up " + wakeUp(controller)
                + "). Find out why the receiving side wakes so late; a faster baud rate will not help.";
    }

    private static String wakeUp(Controller controller) {
        return Words.time(Math.round(controller.adapter().wakeUp().meanNanos())) + " on average";
    }

    private String queue(PanelResult panel, WorstMoment worst, SegmentResult segment) {
        Controller controller = segment(panel).controller();
        String round = segment.pollCycle().count() == 0
                ? ""
                : "; a round of polls takes " + Words.time(segment.pollCycle().meanNanos()) + " on average and "
                        + Words.time(segment.pollCycle().maxNanos()) + " at most";
        String wait = "into waiting for the frame that brought it, on segment " + panel.segment() + round + ". ";
        if (worst.overruns() > 0) {
            Profile profile = profile(panel);
            return wait + Words.count(worst.overruns(), "frame") + " for node " + panel.node()
                    + " got lost in its buffers meanwhile (" + profile.ringChars() + " characters in the ring, "
                    + profile.fifoChars() + " in the UART): shorten what blocks it" + longestBlock(panel) + ".";
        }
        if (worst.clashes() > 0) {
            return wait + "Transmissions touched " + Words.count(worst.clashes(), "time")
                    + " meanwhile: raise the time-out (" + Words.time(controller.timeOutNanos())
                    + ") above the slowest reply, or find who talks out of turn.";
        }
        if (worst.timeOuts() > 0) {
            return wait + "Node " + panel.node() + " did not answer " + Words.count(worst.timeOuts(), "time")
                    + " meanwhile: shorten what blocks it" + longestBlock(panel) + ".";
        }
        if (controller.kind() == Controller.Kind.HOST && controller.adapter().latencyTimerNanos() > 1_000_000L) {
            return wait + "Every turn pays the adapter's latency timer of "
                    + Words.time(controller.adapter().latencyTimerNanos()) + ": set it to 1 ms.";
        }
        return wait + framesOrGaps(panel, segment);
    }

    /** Polls follow each other without end, so it is their frames or the gaps between them that make a round long. */
    private static String framesOrGaps(PanelResult panel, SegmentResult segment) {
        long round = segment.pollCycle().meanNanos();
        long frames = Math.round(round * segment.utilisation());
        String parts = "Of an average round, frames take " + Words.time(frames) + " and the gaps between them "
                + Words.time(round - frames) + ". ";
        String fewer = ", give node " + panel.node() + " more polls a round, or move panels to another segment.";
        if (frames >= round - frames) {
            return parts + "Raise the baud rate (" + segment.baud() + ")" + fewer;
        }
        return parts + "Replies come "
                + Words.time(Math.max(0, segment.replyGap().meanNanos())) + " after the request on average and "
                + Words.time(Math.max(0, segment.replyGap().maxNanos())) + " at most. Make them come sooner" + fewer;
    }

    private String wire(PanelResult panel, SegmentResult segment) {
        return "into its frame on the wire of segment " + panel.segment() + " at " + segment.baud()
                + " baud. Raise the baud rate, or put fewer signals into a frame.";
    }

    private String nodeWait(PanelResult panel) {
        return "by before the program of node " + panel.node() + " took the value. Shorten what blocks it"
                + longestBlock(panel) + ", or split it into parts with the receive loop in between.";
    }

    private String device(PanelResult panel, WorstMoment worst) {
        Indicator indicator = indicator(panel, worst.indicator());
        String name = worst.indicator() + ", " + sort(indicator.kind());
        if (indicator.kind().refreshes()) {
            return "into " + name + " that is refreshed every " + Words.time(indicator.refreshEveryNanos())
                    + " and takes " + Words.time(indicator.refreshTakesNanos())
                    + " for it. "
                    + (2 * indicator.refreshTakesNanos() > indicator.refreshEveryNanos()
                            ? "Shorten the refresh: send it only what changed, or over a faster link."
                            : "Refresh it more often.");
        }
        if (indicator.kind() == Indicator.Kind.SERVO) {
            return "into " + name + " that takes a command every " + Words.time(indicator.refreshEveryNanos())
                    + " and starts after " + Words.time(indicator.delayNanos())
                    + ". Command it more often, or allow it more time.";
        }
        return switch (indicator.kind()) {
            case FLAG ->
                "into " + name + " that takes " + Words.time(indicator.delayNanos())
                        + " to turn over. Allow it more time, or use a quicker one.";
            case FILAMENT_LAMP ->
                "into " + name + " that takes " + Words.time(indicator.glow().riseNanos()) + " to glow and "
                        + Words.time(indicator.glow().fallNanos())
                        + " to fade. Allow it more time, keep it warm with a little current, or use an LED.";
            default ->
                "into " + name + " that starts " + Words.time(indicator.delayNanos()) + " after its command"
                        + brakes(indicator) + ". Start it sooner, or allow it more time.";
        };
    }

    private static String brakes(Indicator indicator) {
        long braking = indicator.motion().longestBrakingNanos();
        return braking == 0 ? "" : ", and up to " + Words.time(braking) + " later when it is sent back in full motion";
    }

    private static String sort(Indicator.Kind kind) {
        return switch (kind) {
            case LAMP -> "a lamp";
            case FILAMENT_LAMP -> "a filament lamp";
            case BACKLIGHT_ZONE -> "a backlight zone";
            case LED_BAR -> "an LED bar";
            case FLAG -> "a flag";
            case DIGITS -> "a digit display";
            case CHARACTER_LCD -> "a character LCD";
            case VFD -> "a VFD";
            case OLED -> "an OLED";
            case GAUGE_STEPPER -> "a gauge stepper";
            case STEPPER -> "a stepper";
            case SERVO -> "a servo";
            case DRUM_COUNTER -> "a drum counter";
        };
    }

    private String onControl(ControlResult control, SegmentResult segment) {
        if (control.lostSteps() > 0) {
            return Words.count(control.lostSteps(), "step") + " of " + control.moves()
                    + " never reached the host: moved "
                    + "back before node " + control.node() + " believed it, or not heard of by the end. Look at its"
                    + " debounce time, and whether the node answers.";
        }
        Controller controller =
                pit.segments().get(place(control.node()).segment()).controller();
        String adapter = controller.adapter().latencyTimerNanos() > 1_000_000L
                ? " Its adapter's latency timer is "
                        + Words.time(controller.adapter().latencyTimerNanos()) + ": set it to 1 ms."
                : " Shorten the round, or give node " + control.node() + " more polls in it.";
        return "It took " + Words.time(control.verdict().valueNanos())
                + " to reach the host; a round of polls on segment " + control.segment() + " takes up to "
                + Words.time(segment.pollCycle().maxNanos()) + "." + adapter;
    }

    private String longestBlock(PanelResult panel) {
        return longestBlock(place(panel.node()).node());
    }

    /** What blocks a node longest, in brackets; nothing if it has no such task or refresh. */
    static String longestBlock(Node node) {
        String what = "";
        long longest = 0;
        for (Profile.Task task : node.profile().tasks()) {
            if (task.blocks() != Indicator.Blocks.NOTHING && task.takesNanos() > longest) {
                longest = task.takesNanos();
                what = task.name();
            }
        }
        for (Panel carried : node.panels()) {
            for (Indicator indicator : carried.indicators()) {
                if (indicator.blocks() != Indicator.Blocks.NOTHING && indicator.refreshTakesNanos() > longest) {
                    longest = indicator.refreshTakesNanos();
                    what = "the refresh of " + indicator.name() + " on " + carried.name();
                }
            }
        }
        return longest == 0 ? "" : " (longest: " + what + ", " + Words.time(longest) + ")";
    }

    private Layout.NodePlace place(String node) {
        return Objects.requireNonNull(nodes.get(node));
    }

    private Profile profile(PanelResult panel) {
        return place(panel.node()).node().profile();
    }

    private Segment segment(PanelResult panel) {
        return pit.segments().get(place(panel.node()).segment());
    }

    private Indicator indicator(PanelResult panel, String name) {
        return place(panel.node()).node().panels().stream()
                .filter(carried -> carried.name().equals(panel.panel()))
                .flatMap(carried -> carried.indicators().stream())
                .filter(candidate -> candidate.name().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
