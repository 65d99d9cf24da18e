package dropline.harness.plan;

import dropline.bus.pit.Pit;
import dropline.harness.origin.Trials;
import dropline.harness.pitfile.PitFile;
import dropline.harness.problem.Problems;
import dropline.harness.recording.PitFeed;
import dropline.harness.replay.Source;
import dropline.harness.size.Judging;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Pits of boards that each carry a panel with one lamp and one switch, on slow segments with addressed state: a poll
 * takes some 30 ms, so that a segment takes few boards.
 */
final class PitOfBoards {
    /** Two boards on a segment keep it, three do not. */
    static final String TIGHT = "90 ms";

    private static final long LOAD_NANOS = 20_000_000_000L;

    private final StringBuilder segments = new StringBuilder();
    private final StringBuilder nodes = new StringBuilder();
    private final StringBuilder panels = new StringBuilder();
    private final StringBuilder signals = new StringBuilder();
    private int boards;

    PitOfBoards segment(String name) {
        segments.append("""
              # the pair called NAME
              NAME:
                baud: 9600 baud
                protocol: modbus-rtu
                controller: {hub: HUB, time-out: 20 ms, retries: 0, back-off-after: 1}  # as built
            """.replace("NAME", name).replace("HUB", "hub of " + name));
        return this;
    }

    /** @param keys further keys of its panel, each with a comma before it */
    PitOfBoards board(String segment, String place, String limit, String keys) {
        boards++;
        String n = Integer.toString(boards);
        signals.append("  lamp N: {unit: on/off, range: 0..1, number: N}\n".replace("N", n));
        nodes.append("  board N: {segment: SEGMENT, address: N, profile: plain}  # number N\n"
                .replace("SEGMENT", segment)
                .replace("N:", n + ":")
                .replace(": N,", ": " + n + ",")
                .replace("number N", "number " + n));
        panels.append("""
              panel N:
                node: board N
                place: PLACE
                indicators:
                  lamp: {kind: lamp, shows: lamp NKEYS}
                budget: {update: LIMIT, control: 1 s, source: chosen for this test}
            """.replace("KEYS", keys)
                .replace("PLACE", place)
                .replace("LIMIT", limit)
                .replace("panel N", "panel " + n)
                .replace("board N", "board " + n)
                .replace("lamp N", "lamp " + n));
        return this;
    }

    String text() {
        StringBuilder hubs = new StringBuilder();
        for (String line : segments.toString().split("\n")) {
            int at = line.indexOf("hub of ");
            if (at >= 0) {
                String hub = line.substring(at, line.indexOf(',', at));
                hubs.append("  ").append(hub).append(": {kind: board, adapter: none}\n");
            }
        }
        return "pit: Boards\n\nload: {every: 100 ms, changes: " + boards + "}\n\nhubs:\n" + hubs + """

            profiles:
              plain: {source: chosen for this test, replies-from: interrupt, reply-gap: 4200..4400 us}

            signals:
            """ + signals
                + "\nsegments:\n" + segments + "\nnodes:\n" + nodes + "\npanels:\n" + panels;
    }

    static PitFile.Understood understood(String text) {
        PitFile.Result result = PitFile.parse("pit.yaml", text);
        if (result instanceof PitFile.Wrong wrong) {
            throw new AssertionError(Problems.text(wrong.problems()) + "\n" + text);
        }
        return (PitFile.Understood) result;
    }

    /** What is asked of a plan at the pit's own rates, without a margin. */
    static PlanAsked asked(PitFile.Understood understood, boolean sameSegments) {
        return new PlanAsked("test", "load", understood.pit(), understood.nodes(), List.of(), sameSegments, 0, 1, 2);
    }

    static Trials.Stretch load(Pit pit) {
        return load(pit, LOAD_NANOS);
    }

    static Trials.Stretch load(Pit pit, long nanos) {
        Pit.Load load = pit.load();
        if (load == null) {
            throw new AssertionError("the pit must describe a load");
        }
        return (from, until) -> () -> Source.load(pit, load, (until == PitFeed.TO_THE_END ? nanos : until) - from);
    }

    static Planned planned(String text) throws IOException {
        return planned(text, false, 2);
    }

    static Planned planned(String text, boolean sameSegments, int threads) throws IOException {
        PitFile.Understood understood = understood(text);
        try (Judging judging = new Judging(threads)) {
            return new Planning(
                            asked(understood, sameSegments),
                            load(understood.pit()),
                            understood.figures(),
                            judging,
                            threads)
                    .run();
        }
    }

    /** The boards of each of a plan's segments, by name, in the order of its pit. */
    static List<List<String>> boards(Planned planned) {
        List<List<String>> all = new ArrayList<>();
        Pit pit = planned.pit();
        if (pit != null) {
            pit.segments()
                    .forEach(segment -> all.add(
                            segment.nodes().stream().map(node -> node.name()).toList()));
        }
        return all;
    }
}
