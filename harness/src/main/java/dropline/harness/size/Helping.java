package dropline.harness.size;

import dropline.bus.pit.Pit;
import dropline.harness.replay.Source;
import dropline.harness.size.Changes.Change;
import dropline.harness.size.SizeResult.Buys;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * What each change would buy, found by running the changed pit on the busiest stretch, in the kinds of run that matter.
 */
final class Helping {
    private final SizePlan plan;
    private final Search own;
    private final List<Case> kinds;
    private final int inFirstSeed;
    private final Judging judging;

    Helping(SizePlan plan, Search own, List<Case> kinds, int inFirstSeed, Judging judging) {
        this.plan = plan;
        this.own = own;
        this.kinds = kinds;
        this.inFirstSeed = inFirstSeed;
        this.judging = judging;
    }

    /** Steps of the baud rate first, as the curves have them, then what else applies. */
    List<Buys> all(List<BaudCurve> curves, List<Long> activity) throws IOException {
        List<Buys> buys = new ArrayList<>(steps(curves));
        List<Change> changes = new Changes(plan.pit(), plan.segment()).all();
        buys.addAll(judging.each(changes, this::of));
        buys.addAll(moved(activity));
        return buys;
    }

    private List<Buys> steps(List<BaudCurve> curves) {
        List<Buys> steps = new ArrayList<>();
        int baud = plan.pit().segments().get(plan.segment()).baud();
        for (int i = 0; i < curves.size(); i++) {
            BaudCurve curve = curves.get(i);
            boolean isNext = (i + 1 < curves.size() && curves.get(i + 1).baud() == baud)
                    || (i > 0 && curves.get(i - 1).baud() == baud);
            if (isNext) {
                steps.add(new Buys(curve.baud() + " baud in place of " + baud, curve.more(), curve.beyond()));
            }
        }
        return steps;
    }

    private Buys of(Change change) throws IOException {
        Search search = own.of(own.growth().of(change.pit()));
        int more = search.largestOf(kinds, Math.max(0, inFirstSeed));
        return new Buys(change.words(), more, search.beyond(more));
    }

    /** A tenth of the boards, at least one, moved to the first segment on which all then keep their budgets. */
    private List<Buys> moved(List<Long> activity) throws IOException {
        Pit pit = plan.pit();
        int nodes = pit.segments().get(plan.segment()).nodes().size();
        int boards = Math.max(1, nodes / 10);
        if (nodes <= boards) {
            return List.of();
        }
        for (Moving way : Moving.all(pit, plan.segment(), boards, activity)) {
            Mirror mirror = way.mirror(pit);
            Source.Opening opening = () -> mirror.over(own.opening().open());
            Fare there = judging.all(
                            List.of(new Candidate(way.pit(), way.to(), opening, plan.seed(), Candidate.HEALTHY)))
                    .get(0);
            if (there.keeps(0)) {
                Growth growth = own.growth().of(way.pit());
                Search search = own.with(growth, opening);
                int more = search.largestOf(kinds.subList(0, 1), Math.max(0, inFirstSeed));
                String words = "move " + String.join(" and ", way.names()) + " to segment "
                        + pit.segments().get(way.to()).name();
                return List.of(new Buys(words, more, search.beyond(more)));
            }
        }
        return List.of();
    }
}
