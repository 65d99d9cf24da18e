package dropline.harness.report;

import dropline.harness.finding.Cause;
import dropline.harness.finding.Confidence;
import dropline.harness.finding.Finding;
import dropline.harness.finding.Tiers;
import dropline.harness.verdict.Advice;
import dropline.harness.verdict.AtWorst;
import dropline.harness.verdict.BusFrame;
import dropline.harness.verdict.ControlResult;
import dropline.harness.verdict.Latency;
import dropline.harness.verdict.LatencyHistogram;
import dropline.harness.verdict.Outcome;
import dropline.harness.verdict.PanelResult;
import dropline.harness.verdict.Recording;
import dropline.harness.verdict.ReplayResult;
import dropline.harness.verdict.RestsOn;
import dropline.harness.verdict.SegmentResult;
import dropline.harness.verdict.SingleFailure;
import dropline.harness.verdict.Stages;
import dropline.harness.verdict.Strain;
import dropline.harness.verdict.Verdict;
import dropline.harness.verdict.WorstMoment;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** A result with 36 panels on 3 segments, every figure invented; for looking at its renderings. */
final class InventedResult {
    static final long MILLI = 1_000_000L;
    private static final long BUDGET = 100 * MILLI;
    private static final List<String> SEGMENTS = List.of("main panel", "overhead", "engine room");

    private final String firstPanel;

    private InventedResult(String firstPanel) {
        this.firstPanel = firstPanel;
    }

    static ReplayResult plain() {
        return withPanel("Standby horizon, left");
    }

    /** The same, with this name for the panel that fails. */
    static ReplayResult withPanel(String name) {
        return new InventedResult(name).result();
    }

    private ReplayResult result() {
        List<PanelResult> panels = new ArrayList<>();
        for (int i = 0; i < 36; i++) {
            panels.add(panel(i));
        }
        panels.sort(Comparator.comparing((PanelResult panel) -> panel.verdict().outcome() == Outcome.UNDECIDED)
                .thenComparingLong(panel -> panel.verdict().marginNanos()));
        return new ReplayResult(
                ReplayResult.VERSION,
                "0.1.0",
                "Invented pit",
                new Recording("flight.dlr", 612_000 * MILLI),
                1,
                "00c0ffee00c0ffee",
                List.of(),
                Outcome.FAIL,
                List.of(
                        "2 of 36 panels miss their limit; " + firstPanel + " took 161.3 ms and its limit is 100 ms.",
                        "99 of 100 changes show within 38 ms.",
                        "33 panels show every change in time; 1 panel was never updated and is not judged."),
                List.of(new Finding(
                        List.of(Cause.SWAPPED_PAIR),
                        Finding.Subject.NODE,
                        "node 12",
                        12,
                        "right",
                        Confidence.CERTAIN,
                        14,
                        2_000,
                        9_000,
                        Tiers.ALL,
                        "Node <12> has its two wires exchanged.",
                        "Exchange A and B.")),
                List.of(
                        new Advice(
                                firstPanel,
                                "Its node waits 92 ms for its own display. Refresh the display in parts, or move it to"
                                        + " a node of its own."),
                        new Advice("engine room", "The segment is busy 91% of the time. Raise its baud rate.")),
                List.of("Reply gaps of 9 nodes are presets, not measured.", "Bit-level contention is not modelled."),
                List.of("common practice, for comparison"),
                new Latency(120_000, 12 * MILLI, 9 * MILLI, 24 * MILLI, 38 * MILLI, 161 * MILLI + 300_000),
                panels,
                List.of(control("Gear lever", "toggle", 61), control("Heading knob", "encoder", 24)),
                List.of(segment(0), segment(1), segment(2)),
                List.of(failure()),
                restsOn());
    }

    private RestsOn restsOn() {
        return new RestsOn(
                41,
                60,
                9,
                12,
                new RestsOn.Tried(
                        8,
                        590_000 * MILLI,
                        610_000 * MILLI,
                        1,
                        List.of("panel <7>, indicator readout, refresh-takes at double"),
                        0,
                        new RestsOn.Next(
                                "profile <gauge> board, reply-gap",
                                "300 us",
                                "pit.yaml:27:16",
                                "right",
                                new Strain(2, 1.613, firstPanel),
                                new Strain(0, 0.94, firstPanel),
                                new Strain(5, 2.91, firstPanel))));
    }

    private PanelResult panel(int i) {
        boolean unused = i == 35;
        long slowest = unused ? 0 : i == 0 ? 161 * MILLI + 300_000 : i == 1 ? 104 * MILLI : (20 + i * 2) * MILLI;
        String name = i == 0 ? firstPanel : "Panel " + i + (i % 5 == 0 ? " with a rather long name of its own" : "");
        Outcome outcome = unused ? Outcome.UNDECIDED : slowest <= BUDGET ? Outcome.PASS : Outcome.FAIL;
        Stages stages = stages(slowest);
        return new PanelResult(
                name,
                i % 3 == 0 ? "left of the throttle" : "",
                SEGMENTS.get(i % 3),
                "node " + i,
                i % 7 == 0 ? "planned" : "built",
                BUDGET,
                "common practice, for comparison",
                new Verdict(outcome, "slowest update", slowest, BUDGET, "one run", "simulated"),
                unused
                        ? Latency.NONE
                        : new Latency(4000, slowest / 4, slowest / 5, slowest / 3, slowest * 2 / 3, slowest),
                i % 4 == 3
                        ? new AtWorst(-1, List.of(), "the reply of node " + i + " may end 9 ms after its request")
                        : new AtWorst(2 * slowest, List.of(new AtWorst.Part("queue", 2 * slowest)), ""),
                stages(slowest / 4),
                unused ? null : moment(i, slowest, stages),
                unused ? new LatencyHistogram(List.of()) : histogram(slowest),
                0,
                0,
                List.of());
    }

    private static Stages stages(long total) {
        long part = total / 10;
        return new Stages(part, part / 2, 3 * part, part, 2 * part, total - part * 7 - part / 2);
    }

    private static LatencyHistogram histogram(long slowest) {
        List<LatencyHistogram.Bucket> buckets = new ArrayList<>();
        long width = slowest / 40 + 1;
        for (int i = 0; i < 40; i++) {
            long count = i < 8 ? i * 100L : 800L / (i - 6) - 20;
            buckets.add(new LatencyHistogram.Bucket(i * width, (i + 1) * width, Math.max(0, count) + i / 39));
        }
        return new LatencyHistogram(buckets);
    }

    private static WorstMoment moment(int panel, long slowest, Stages stages) {
        long changed = 247_120 * MILLI;
        List<BusFrame> frames = new ArrayList<>();
        long at = changed - 2 * MILLI;
        for (int i = 0; i < 90 && at < changed + slowest; i++) {
            String node = "node " + (panel + 3 * (i % 11)) % 36;
            if (i % 13 == 5) {
                frames.add(new BusFrame("controller", BusFrame.Kind.BROADCAST, "all", i, at, at + MILLI, false));
                at += MILLI + MILLI / 4;
                continue;
            }
            frames.add(new BusFrame("controller", BusFrame.Kind.REQUEST, node, i, at, at + 600_000, i == 20));
            frames.add(new BusFrame(node, BusFrame.Kind.REPLY, node, i, at + 700_000, at + 1_500_000, i == 20));
            at += 1_600_000;
        }
        return new WorstMoment(
                "digits",
                "heading",
                changed,
                changed + slowest,
                stages,
                2,
                1,
                0,
                0,
                changed - 2 * MILLI,
                changed + slowest + 2 * MILLI,
                frames);
    }

    private static ControlResult control(String name, String kind, long slowestMillis) {
        long slowest = slowestMillis * MILLI;
        return new ControlResult(
                name,
                kind,
                "Panel 3",
                SEGMENTS.get(0),
                "node 3",
                41,
                new Latency(41, slowest / 2, slowest / 2, slowest, slowest, slowest),
                new AtWorst(2 * slowest, List.of(new AtWorst.Part("queue", 2 * slowest)), ""),
                0,
                0,
                BUDGET,
                "common practice, for comparison",
                new Verdict(Outcome.PASS, "slowest control", slowest, BUDGET, "one run", "simulated"));
    }

    private static SegmentResult segment(int i) {
        List<SegmentResult.CyclePoint> points = new ArrayList<>();
        for (int p = 0; p < 300; p++) {
            long mean = (14 + i * 40 + p % 7) * MILLI;
            points.add(new SegmentResult.CyclePoint(p * 2040L * MILLI, mean, mean + (p % 11 == 0 ? 20 : 3) * MILLI));
        }
        long mean = (15 + i * 40) * MILLI;
        return new SegmentResult(
                SEGMENTS.get(i),
                i == 0 ? 500_000 : i == 1 ? 76_800 : 19_200,
                i == 2 ? "8E1" : "8N1",
                12,
                0.31 + 0.3 * i,
                new Latency(40_000, mean, mean, mean + MILLI, mean + 4 * MILLI, mean + 25 * MILLI),
                new AtWorst(3 * mean, List.of(new AtWorst.Part("queue", 3 * mean)), ""),
                mean - 2 * MILLI,
                points,
                480_000,
                479_998,
                3,
                5,
                2,
                1,
                1,
                4,
                15_300,
                new SegmentResult.ReplyGap(-20_000, 151_000, 2 * MILLI),
                List.of(new SegmentResult.NodeGap("node " + i, 479_998, 151_000)));
    }

    private SingleFailure failure() {
        Verdict healthy = new Verdict(Outcome.PASS, "slowest update", 90 * MILLI, BUDGET, "one run", "simulated");
        Verdict then = new Verdict(Outcome.FAIL, "slowest update", 120 * MILLI, BUDGET, "one run", "simulated");
        return new SingleFailure(
                "node 4",
                SEGMENTS.get(1),
                Outcome.FAIL,
                List.of("Panel 4"),
                75 * MILLI,
                55 * MILLI,
                List.of(new SingleFailure.PanelThen(
                        "Panel 7",
                        then,
                        healthy,
                        new Latency(1, 120 * MILLI, 120 * MILLI, 120 * MILLI, 120 * MILLI, 120 * MILLI))));
    }
}
