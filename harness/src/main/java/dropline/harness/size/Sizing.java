package dropline.harness.size;

import dropline.bus.pit.Node;
import dropline.bus.pit.Panel;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;
import dropline.bus.rule.Ruling;
import dropline.harness.origin.Trials;
import dropline.harness.pitfile.Figures;
import dropline.harness.recording.PitFeed;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Source;
import dropline.harness.size.SizeResult.Buys;
import dropline.harness.size.SizeResult.GuessedNumber;
import dropline.harness.size.SizeResult.LimitedBy;
import dropline.harness.size.SizeResult.Ruled;
import dropline.harness.verdict.Recording;
import java.io.IOException;
import java.util.List;
import java.util.Locale;

/** Sizes one segment of a pit. */
public final class Sizing {
    /** How much of what is played the search uses: the busiest of it. */
    private static final int SECONDS = 60;

    private static final int SCREEN_SECONDS = 10;

    /** Shares that the parts have in the whole, by and large. */
    private static final double READ = 0.1;

    private static final double SEARCHED = 0.25;
    private static final double ANSWERED = 0.25;
    private static final double COMPARED = 0.3;
    private static final double GUESSED = 0.1;

    private final SizePlan plan;
    private final Trials.Stretch played;
    private final Figures figures;
    private final Judging judging;

    /**
     * @param played opens parts of what is played
     * @param figures what the pit rests on
     */
    public Sizing(SizePlan plan, Trials.Stretch played, Figures figures, Judging judging) {
        this.plan = plan;
        this.played = played;
        this.figures = figures;
        this.judging = judging;
    }

    /**
     * Does all of it.
     *
     * @param progress hears after each part how much of all is done, by and large, on any thread but never on two at
     *     once
     * @throws IOException if what is played cannot be read
     */
    public SizeResult run(Progress progress) throws IOException {
        Pit pit = plan.pit();
        int segment = plan.segment();
        Source.Opening all = played.of(0, PitFeed.TO_THE_END);
        List<Busiest> stretches =
                judging.each(List.of(SECONDS, SCREEN_SECONDS), seconds -> Busiest.of(all, pit, segment, seconds));
        List<Tape> tapes = judging.each(stretches, this::tape);
        Busiest busiest = stretches.get(0);
        Aside aside = Aside.of(pit, segment, tapes.get(0)::open, plan.seed(), plan.margin(), judging);
        List<Node> adding = adding(aside);
        Growth growth = new Growth(pit, segment, adding);
        Demand demand = new Demand(plan.margin(), aside);
        Search screen = new Search(growth, tapes.get(1)::open, judging, demand, growth.most(), null);
        Search search = new Search(growth, tapes.get(0)::open, judging, demand, growth.most(), screen);
        Search whole = new Search(growth, all, judging, demand, growth.most(), null);
        Answering answering = new Answering(screen, search, whole, plan.seed(), plan.seeds(), judging);
        Parts parts = new Parts(progress);
        parts.done(READ);
        int found = parts.done(SEARCHED, answering.inFirstSeed());
        List<Case> kinds = answering.kinds();
        Search comparing = search.copy();
        Guessing guessing = new Guessing(plan, figures, screen.copy(), search.copy(), kinds, found, judging);
        Judging.Begun<TimeAnswer> answered = judging.begin(() -> parts.done(ANSWERED, answering.answer(found)));
        Judging.Begun<Compared> compared =
                judging.begin(() -> parts.done(COMPARED, compared(comparing, kinds, found, busiest)));
        Judging.Begun<List<GuessedNumber>> guessed = judging.begin(() -> parts.done(GUESSED, guessing.all()));
        List<Ruled> ruled =
                plan.limits().stream().map(limit -> ruled(limit, growth)).toList();
        TimeAnswer time = answered.result();
        Segment now = pit.segments().get(segment);
        int byRules = ruled.stream().mapToInt(Ruled::more).min().orElse(Integer.MAX_VALUE);
        return new SizeResult(
                SizeResult.VERSION,
                plan.droplineVersion(),
                pit.name(),
                now.name(),
                new Recording(plan.recording(), busiest.wholeNanos()),
                busiest.fromNanos(),
                busiest.untilNanos(),
                plan.seed(),
                plan.seeds(),
                plan.margin(),
                now.baud(),
                panels(now).size(),
                planned(now),
                now.nodes().size(),
                growth.most(),
                adding.stream().map(board -> board.panels().get(0).name()).toList(),
                Math.min(time.more(), byRules),
                limitedBy(time, byRules, growth.most()),
                aside.out(),
                time,
                ruled,
                compared.result().curves(),
                compared.result().buys(),
                guessed.result(),
                Coarse.of(pit, now, busiest.statesPerSecond(pit.statePeriodNanos())),
                List.of(),
                Trials.counted(figures));
    }

    /** Other rates, and what else would help. */
    private record Compared(List<BaudCurve> curves, List<Buys> buys) {}

    private Compared compared(Search search, List<Case> kinds, int found, Busiest busiest) throws IOException {
        List<BaudCurve> curves = new Curves(plan, search, kinds, found, judging).all();
        return new Compared(curves, new Helping(plan, search, kinds, found, judging).all(curves, busiest.bySignal()));
    }

    /** Says how much is done. */
    private static final class Parts {
        private final Progress progress;
        private double share;

        Parts(Progress progress) {
            this.progress = progress;
        }

        synchronized void done(double part) {
            share += part;
            progress.reached(0, share);
        }

        <A> A done(double part, A result) {
            done(part);
            return result;
        }
    }

    private Tape tape(Busiest stretch) throws IOException {
        return Tape.of(played.of(stretch.fromNanos(), stretch.untilNanos()), plan.pit(), plan.segment());
    }

    private static LimitedBy limitedBy(TimeAnswer time, int byRules, int addresses) {
        if (byRules < time.more()) {
            return LimitedBy.RULES;
        }
        return time.more() == addresses ? LimitedBy.ADDRESSES : LimitedBy.TIME;
    }

    private List<Node> adding(Aside aside) {
        Segment now = plan.pit().segments().get(plan.segment());
        if (!plan.adding().isEmpty()) {
            return plan.adding();
        }
        List<Node> own = Growth.panelsOf(now, aside);
        return own.isEmpty() ? Growth.panelsOf(now, Aside.NOBODY) : own;
    }

    private static int planned(Segment segment) {
        return (int) panels(segment).stream()
                .filter(panel -> panel.status() == Panel.Status.PLANNED)
                .count();
    }

    private static List<Panel> panels(Segment segment) {
        return segment.nodes().stream().flatMap(node -> node.panels().stream()).toList();
    }

    /** The most further panels with which a limit's rules hold, by halves: more panels break no fewer of them. */
    private Ruled ruled(Limit limit, Growth growth) {
        int low = -1;
        int high = growth.most() + 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (broken(limit, growth, middle).isEmpty()) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return new Ruled(
                limit.name().toLowerCase(Locale.ROOT),
                low,
                high > growth.most() ? List.of() : broken(limit, growth, high));
    }

    private List<Ruling> broken(Limit limit, Growth growth, int count) {
        return limit.of(growth.by(count).pit(), plan.segment()).stream()
                .filter(ruling -> ruling.standing() == Ruling.Standing.BROKEN)
                .toList();
    }
}
