package dropline.harness.size;

import dropline.bus.pit.Pit;
import dropline.harness.origin.Trials;
import dropline.harness.pitfile.PitFile;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A pit with one segment of boards with a lamp each, its described load played for some seconds.
 *
 * @param text of its pit file
 * @param margin share of every budget to leave
 * @param seeds how many to try
 * @param bauds rates to try
 * @param limits rules beside time
 */
record SizedPit(String text, double margin, int seeds, List<Integer> bauds, List<Limit> limits) {
    private static final long SECOND = 1_000_000_000L;
    private static final long LASTS = 3 * SECOND;

    /** Boards at 115200 baud, each told its own state, so that every board makes all others wait. */
    static SizedPit addressed(int boards, String timeOut, String budget) {
        StringBuilder text = new StringBuilder("""
                load: {every: 20 ms, changes: 1}
                budgets: {update: BUDGET, control: 1 s}
                profiles:
                  plain:
                    replies-from: interrupt
                    reply-gap: 100 us + exponential 50 us, at most 400 us
                    loop-pass: 200 us
                segments:
                  bus:
                    baud: 115200 baud
                    controller:
                      adapter: none
                      gap: 50 us
                      state: addressed
                      time-out: TIMEOUT
                      retries: 1
                      back-off-after: 3
                      back-off-for: 500 ms
                """.replace("BUDGET", budget).replace("TIMEOUT", timeOut));
        StringBuilder signals = new StringBuilder("signals:\n");
        StringBuilder nodes = new StringBuilder("nodes:\n");
        StringBuilder panels = new StringBuilder("panels:\n");
        for (int i = 1; i <= boards; i++) {
            signals.append("  light ")
                    .append(i)
                    .append(": {range: 0..1, number: ")
                    .append(i)
                    .append("}\n");
            nodes.append("  board ")
                    .append(i)
                    .append(": {segment: bus, address: ")
                    .append(i)
                    .append(", profile: plain}\n");
            panels.append("  panel ").append(i).append(": {node: board ").append(i);
            panels.append(", indicators: {lamp: {kind: lamp, shows: light ")
                    .append(i)
                    .append("}}}\n");
        }
        text.append(signals).append(nodes).append(panels);
        return new SizedPit(text.toString(), 0.2, 1, List.of(115_200), List.of());
    }

    SizedPit with(double otherMargin, int otherSeeds) {
        return new SizedPit(text, otherMargin, otherSeeds, bauds, limits);
    }

    SizedPit with(Limit limit) {
        return new SizedPit(text, margin, seeds, bauds, List.of(limit));
    }

    SizedPit replaced(String words, String by) {
        if (!text.contains(words)) {
            throw new AssertionError("not in the text: " + words);
        }
        return new SizedPit(text.replace(words, by), margin, seeds, bauds, limits);
    }

    PitFile.Understood read() {
        PitFile.Result result = PitFile.parse("pit.yaml", text);
        if (result instanceof PitFile.Understood understood) {
            return understood;
        }
        throw new AssertionError(result);
    }

    Trials.Stretch played() {
        Pit pit = read().pit();
        Pit.Load load = Objects.requireNonNull(pit.load());
        return (from, until) -> () -> Source.load(pit, load, Math.min(until, LASTS) - from);
    }

    SizeResult size(int threads) throws IOException {
        PitFile.Understood understood = read();
        SizePlan plan = new SizePlan("test", "load", understood.pit(), 0, List.of(), bauds, margin, 1, seeds, limits);
        try (Judging judging = new Judging(threads)) {
            return new Sizing(plan, played(), understood.figures(), judging).run(Progress.NONE);
        }
    }

    /** The same by trying every number in turn, with one node of each kind dead and none. */
    int byTryingAll(int most) throws IOException {
        Pit pit = read().pit();
        Tape tape = Tape.of(played().of(0, LASTS), pit, 0);
        Growth growth = new Growth(pit, 0, Growth.panelsOf(pit.segments().get(0), Aside.NOBODY));
        try (Judging judging = new Judging(2)) {
            for (int count = 0; count <= most; count++) {
                Grown grown = growth.by(count);
                List<Candidate> all = new ArrayList<>(List.of(grown.candidate(tape::open, 1, Candidate.HEALTHY)));
                for (int dead : DeadClasses.of(grown.pit().segments().get(0))) {
                    all.add(grown.candidate(tape::open, 1, dead));
                }
                if (!judging.all(all).stream().allMatch(fare -> fare.keeps(margin))) {
                    return count - 1;
                }
            }
        }
        return most;
    }
}
