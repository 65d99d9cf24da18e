package dropline.harness.size;

import dropline.bus.rule.Ruling;
import dropline.harness.size.SizeResult.LimitedBy;
import dropline.harness.size.SizeResult.Ruled;
import dropline.harness.verdict.Stage;
import dropline.harness.verdict.Words;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a sizing came to in plain sentences: the number first, then what limits it, then how sure it is. */
final class SizeSentences {
    private final SizeResult result;

    SizeSentences(SizeResult result) {
        this.result = result;
    }

    List<String> all() {
        List<String> sentences = new ArrayList<>();
        sentences.add(headline());
        sentences.add(limit());
        tightest(sentences);
        ruled(sentences);
        sureness(sentences);
        aside(sentences);
        coarse(sentences);
        next(sentences);
        return sentences;
    }

    private String headline() {
        String there = Words.count(result.panels(), "panel") + " there"
                + (result.planned() == 0 ? "" : " (" + result.planned() + " planned)");
        String on = " on segment " + result.segment() + " at " + result.baud() + " baud";
        if (result.more() < 0) {
            return "Segment " + result.segment() + " at " + result.baud()
                    + " baud is not fit as it stands: take panels off it, or change what is said below.";
        }
        if (result.more() == 0) {
            return "No further panel fits" + on + ", beside the " + there + ".";
        }
        return Words.count(result.more(), "further panel") + (result.more() == 1 ? " fits" : " fit") + on
                + ", beside the " + there + ".";
    }

    private String limit() {
        if (result.limitedBy() == LimitedBy.ADDRESSES) {
            return result.addresses() == 0
                    ? "No address is left, or no pair to put a board on."
                    : "That uses every address left; time on the wire would allow more.";
        }
        if (result.limitedBy() == LimitedBy.RULES) {
            return "Time on the wire would allow "
                    + (result.time().more() < 0 ? "none" : result.time().more()) + ".";
        }
        Tight beyond = result.time().beyond();
        String with = result.more() < 0 ? "As it stands, " : "With one more, ";
        return beyond == null ? "What limits it was not found." : with + misses(beyond) + ".";
    }

    private void tightest(List<String> sentences) {
        Tight tightest = result.time().tightest();
        if (tightest != null
                && result.more() >= 0
                && result.more() == result.time().more()) {
            Fared fared = tightest.fared();
            sentences.add("With " + (result.more() == 0 ? "those there" : "all " + result.more())
                    + ", the one nearest its limit is " + fared.name() + ": 99 of 100 within "
                    + Words.time(fared.p99Nanos()) + ", the slowest " + Words.time(fared.worstNanos()) + " of "
                    + Words.time(fared.limitNanos()) + dead(tightest.deadNode()) + ". "
                    + (tightest.isBounded()
                            ? "By the stated maxima it can never take longer than " + Words.time(tightest.boundNanos())
                                    + "."
                            : "The stated maxima do not bound it."));
        }
    }

    private void ruled(List<String> sentences) {
        for (Ruled ruled : result.ruled()) {
            for (Ruling ruling : ruled.broken()) {
                sentences.add("By " + ruled.name() + ", "
                        + (ruled.more() < 0 ? "not even those there fit" : ruled.more() + " more fit") + ": "
                        + ruling.rule().title() + " at " + ruling.where() + " would come to " + ruling.value() + " "
                        + ruling.rule().unit().symbol() + " of " + ruling.limit() + ".");
            }
        }
    }

    private String misses(Tight tight) {
        Fared fared = tight.fared();
        return fared.name() + (fared.control() ? " takes until the host knows" : " takes")
                + (fared.control() ? " " : " up to ") + Words.time(fared.worstNanos())
                + (fared.lost() > 0
                        ? " and loses " + Words.count(fared.lost(), fared.control() ? "move" : "change")
                        : "")
                + dead(tight.deadNode()) + mostly(fared.mostly()) + "; its limit of " + Words.time(fared.limitNanos())
                + (fared.whole() ? "" : ", less the margin of " + Words.share(result.margin()) + ",") + " allows "
                + Words.time(allowed(fared));
    }

    private long allowed(Fared fared) {
        return Demand.allowed(fared.limitNanos(), fared.whole() ? 0 : result.margin());
    }

    private static String dead(@Nullable String node) {
        return node == null ? " with every board alive" : " with " + node + " dead";
    }

    private static String mostly(@Nullable Stage stage) {
        return stage == null ? "" : ", mostly " + stage.words();
    }

    private void sureness(List<String> sentences) {
        TimeAnswer time = result.time();
        if (result.more() >= 0 && result.seeds() > 1) {
            sentences.add(
                    time.mostBySeed() == time.more()
                            ? "That is so in all " + result.seeds() + " seeds."
                            : time.more() + " to " + time.mostBySeed() + " by seed; " + time.more() + " holds in all "
                                    + result.seeds() + ".");
        }
        boolean part =
                result.untilNanos() - result.fromNanos() < result.recording().durationNanos();
        if (part) {
            sentences.add("Searched on the busiest "
                    + Words.time(result.untilNanos() - result.fromNanos()) + " of what is played, from "
                    + Words.clock(result.fromNanos()) + " on"
                    + (time.confirmed()
                            ? "; confirmed over all "
                                    + Words.time(result.recording().durationNanos())
                                    + (time.beyondOnWhole() ? ", over which one more fails too" : "")
                            : "")
                    + ".");
        }
        if (result.more() >= 0) {
            sentences.add("One board of each of " + Words.count(time.deadKinds(), "kind") + " was tried dead.");
        }
    }

    private void aside(List<String> sentences) {
        for (Fared fared : result.aside()) {
            sentences.add("Not counted: " + fared.name() + " misses its limit even with the segment to itself ("
                    + Words.time(fared.worstNanos()) + " of " + Words.time(fared.limitNanos())
                    + mostly(fared.mostly()) + "). Mend that first; no segment can.");
        }
    }

    /** What to do: what helps most, and what to measure first. */
    private void next(List<String> sentences) {
        SizeResult.Buys best = null;
        for (SizeResult.Buys buys : result.buys()) {
            best = best == null || buys.more() > best.more() ? buys : best;
        }
        int now = result.time().inFirstSeed();
        if (best != null && best.more() > now) {
            sentences.add("What would help most: " + best.change() + ", then " + further(best.more())
                    + (now < 0 ? "." : " in place of " + now + " (in one seed, by time on the wire)."));
        } else if (now < 0) {
            sentences.add("None of the changes tried would make it fit: move panels to another segment.");
        }
        if (!result.guesses().isEmpty()) {
            sentences.add(measureFirst(result.guesses().get(0)));
        }
    }

    private String measureFirst(SizeResult.GuessedNumber guess) {
        List<String> cases = new ArrayList<>();
        if (guess.half() != null) {
            cases.add(further(guess.half()) + " if it is half");
        }
        if (guess.twice() != null) {
            cases.add(further(guess.twice()) + " if it is double");
        }
        return "Measure first: " + guess.figure() + ", about " + guess.text() + " (" + guess.where() + "): "
                + String.join(", ", cases) + ", where " + further(result.time().inFirstSeed()) + " as written.";
    }

    private static String further(int more) {
        return more < 0
                ? "not even those there fit"
                : more == 0 ? "no further panel" : Words.count(more, "further panel");
    }

    private void coarse(List<String> sentences) {
        for (SizeResult.CoarseMotion coarse : result.coarse()) {
            sentences.add(coarse.indicator() + " of " + coarse.panel() + " gets "
                    + Math.round(coarse.statesPerSecond()) + " states a second and may turn "
                    + Math.round(coarse.step() * 10) / 10.0 + " " + coarse.unit()
                    + " between two: it will look jittery (common practice: small gauge steppers do at 10 a second).");
        }
    }
}
