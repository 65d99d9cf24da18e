package dropline.harness.plan;

import dropline.bus.rule.Ruling;
import dropline.harness.plan.PlanResult.PlannedSegment;
import dropline.harness.plan.PlanResult.Split;
import dropline.harness.ruling.RulingText;
import dropline.harness.size.Fared;
import dropline.harness.size.Tight;
import dropline.harness.verdict.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/** What a plan came to in plain sentences: whether there is one, what it does, and how sure that is. */
final class PlanSentences {
    private static final int MOST_NAMES = 4;

    private final PlanResult result;

    PlanSentences(PlanResult result) {
        this.result = result;
    }

    List<String> all() {
        List<String> sentences = new ArrayList<>();
        sentences.add(headline());
        if (result.offered()) {
            sentences.add(changes());
            tightest(sentences);
            result.splits().forEach(split -> sentences.add(split(split)));
            result.fewer().forEach(refusal -> sentences.add(fewer(refusal)));
            sureness(sentences);
        }
        hopeless(sentences);
        if (!result.broken().isEmpty()) {
            sentences.add("Where boards go mends nothing of this: "
                    + Words.count(result.broken().size(), "rule") + " of copper or supply "
                    + (result.broken().size() == 1 ? "is" : "are") + " broken as it stands (see below).");
        }
        return sentences;
    }

    private String headline() {
        if (!result.offered()) {
            return "No plan was found that passes: every way that was tried misses a limit, less the margin of "
                    + Words.share(result.margin())
                    + ", or a rule of copper. Take boards off, allow further segments, or widen the limits of the"
                    + " panels named by 'dropline size' without --plan.";
        }
        int nodes = result.segments().stream().mapToInt(PlannedSegment::nodes).sum();
        int panels = result.segments().stream().mapToInt(PlannedSegment::panels).sum();
        return Words.count(panels, "panel") + " on " + Words.count(nodes, "board") + " fit on "
                + Words.count(result.segments().size(), "segment")
                + (result.segments().size() == result.before()
                        ? ", as many as now."
                        : "; now there " + (result.before() == 1 ? "is 1." : "are " + result.before() + "."));
    }

    private String changes() {
        boolean same = result.moves().isEmpty()
                && result.dropped().isEmpty()
                && result.segments().stream().noneMatch(PlanSentences::isSetOtherwise);
        if (same) {
            return "The pit can stay as it is.";
        }
        List<String> parts = new ArrayList<>();
        parts.add(
                result.moves().isEmpty()
                        ? "no board moves"
                        : Words.count(result.moves().size(), "board") + " move"
                                + (result.moves().size() == 1 ? "s" : ""));
        if (!result.dropped().isEmpty()) {
            parts.add(Words.names(result.dropped(), MOST_NAMES)
                    + (result.dropped().size() == 1 ? " is" : " are") + " no longer needed");
        }
        for (PlannedSegment segment : result.segments()) {
            if (isSetOtherwise(segment)) {
                parts.add(segment.name() + " is set otherwise");
            }
        }
        String all = String.join("; ", parts) + ".";
        return all.substring(0, 1).toUpperCase(Locale.ROOT) + all.substring(1);
    }

    static boolean isSetOtherwise(PlannedSegment segment) {
        return segment.baud() != segment.baudBefore()
                || segment.state() != segment.stateBefore()
                || !segment.polledOtherwise().isEmpty();
    }

    private void tightest(List<String> sentences) {
        Tight tightest = null;
        String on = "";
        for (PlannedSegment segment : result.segments()) {
            Tight one = Fits.tighter(tightest, segment.tightest());
            on = Objects.equals(one, tightest) ? on : segment.name();
            tightest = one;
        }
        if (tightest != null) {
            Fared fared = tightest.fared();
            sentences.add("The one nearest its limit is " + fared.name() + " on " + on + ": the slowest took "
                    + Words.time(fared.worstNanos()) + " of " + Words.time(fared.limitNanos())
                    + (tightest.deadNode() == null
                            ? " with every board alive."
                            : " with " + tightest.deadNode() + " dead."));
        }
    }

    private static String split(Split split) {
        String what = "The boards at " + split.place() + " are on " + String.join(" and ", split.segments()) + ": ";
        if (!split.alike()) {
            return what + "they do not speak alike, so they cannot share one.";
        }
        return what
                + (split.fitsOne()
                        ? "together they would fit one, but then the rest would take a further segment."
                        : "together they are too much for one.");
    }

    /** The first of the ways that were tried with one segment less, as it would be set first. */
    private static String fewer(Refusal refusal) {
        String with = "One segment less would put " + Words.count(refusal.boards(), "board") + " on one: ";
        Ruling law = refusal.law();
        Fared missing = refusal.missing();
        if (law != null) {
            return with + law.rule().title() + " would be " + RulingText.value(law) + ", allowed are "
                    + RulingText.limit(law) + " (" + law.rule().source() + ").";
        }
        if (missing == null) {
            return with + "frames to a board would be lost, or a limit missed with a board dead.";
        }
        return with + missing.name() + " would take "
                + (missing.lost() > 0 ? "too long, and lose something" : Words.time(missing.worstNanos())) + " of "
                + Words.time(missing.limitNanos()) + ", and no other setting mends that.";
    }

    private void sureness(List<String> sentences) {
        sentences.add(
                result.exact()
                        ? "Every way to share the boards out was weighed; none that passes takes fewer segments."
                        : "The pit is too large to weigh every way: fewer segments, or fewer moves, may be possible.");
        sentences.add("The plan was played: the busiest "
                + Words.time(result.untilNanos() - result.fromNanos()) + " with one board of each kind dead and in "
                + Words.count(result.seeds(), "seed") + ", then all "
                + Words.time(result.recording().durationNanos()) + ", alive and with the board dead that matters most;"
                + " every panel and control that counts kept its limit with " + Words.share(result.margin())
                + " to spare.");
    }

    private void hopeless(List<String> sentences) {
        for (Fared fared : result.hopeless()) {
            sentences.add("No plan helps " + fared.name() + ": even with a segment to itself it "
                    + (fared.lost() > 0
                            ? "loses " + Words.count(fared.lost(), fared.control() ? "move" : "change")
                            : "takes up to " + Words.time(fared.worstNanos()) + " of " + Words.time(fared.limitNanos()))
                    + (fared.mostly() == null
                            ? ""
                            : ", mostly " + fared.mostly().words())
                    + ". It is not counted; its firmware, its device or its limit has to change.");
        }
    }
}
