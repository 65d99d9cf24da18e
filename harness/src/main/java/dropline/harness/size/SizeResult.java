package dropline.harness.size;

import dropline.bus.rule.Ruling;
import dropline.harness.verdict.Recording;
import dropline.harness.verdict.RestsOn;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything a sizing came to.
 *
 * @param version of this document, {@link #VERSION}
 * @param droplineVersion the program's
 * @param pit the pit's name
 * @param segment the segment's
 * @param recording what was played
 * @param fromNanos where the stretch begins on which was searched, ns into it
 * @param untilNanos where it ends
 * @param seed of the first run; the others follow it
 * @param seeds how many were tried
 * @param margin the share of every budget that must be left
 * @param baud the segment's own rate
 * @param panels on it now, planned ones among them
 * @param planned how many of them are planned
 * @param nodes on it now
 * @param addresses how many are free
 * @param adding the panels added, in turn
 * @param more so many further panels fit, all told; -1 where not even those there are fit
 * @param limitedBy what allows no more
 * @param aside panels and controls that would miss their limit even if alone on the segment; they do not count
 * @param time what time on the wire allows
 * @param ruled what other rules allow
 * @param curves one for each baud rate, ascending
 * @param buys what changes would buy
 * @param guesses what guessed figures would mean, what moves most first
 * @param coarse moving indicators that so few states feed that they visibly step
 * @param losses what of the recording was left out
 * @param restsOn where the pit's figures come from
 */
public record SizeResult(
        int version,
        String droplineVersion,
        String pit,
        String segment,
        Recording recording,
        long fromNanos,
        long untilNanos,
        long seed,
        int seeds,
        double margin,
        int baud,
        int panels,
        int planned,
        int nodes,
        int addresses,
        List<String> adding,
        int more,
        LimitedBy limitedBy,
        List<Fared> aside,
        TimeAnswer time,
        List<Ruled> ruled,
        List<BaudCurve> curves,
        List<Buys> buys,
        List<GuessedNumber> guesses,
        List<CoarseMotion> coarse,
        List<String> losses,
        RestsOn restsOn) {

    /** The version of this document. A new figure leaves it; one that goes or changes its meaning raises it. */
    public static final int VERSION = 1;

    public SizeResult {
        adding = List.copyOf(adding);
        aside = List.copyOf(aside);
        ruled = List.copyOf(ruled);
        curves = List.copyOf(curves);
        buys = List.copyOf(buys);
        guesses = List.copyOf(guesses);
        coarse = List.copyOf(coarse);
        losses = List.copyOf(losses);
    }

    /** What allows no more panels. */
    public enum LimitedBy {
        TIME,
        ADDRESSES,
        RULES
    }

    /**
     * What rules beside time allow.
     *
     * @param name what they look at
     * @param more so many further panels; -1 where one is broken as it stands
     * @param broken the rules that are broken with one more, or as it stands
     */
    public record Ruled(String name, int more, List<Ruling> broken) {
        public Ruled {
            broken = List.copyOf(broken);
        }
    }

    /**
     * What a change would buy.
     *
     * @param change what one would do, in words
     * @param more so many further panels would then fit, by time on the wire; -1 where not even those there are
     * @param beyond what would then limit it; null where nothing but addresses
     */
    public record Buys(String change, int more, @Nullable Tight beyond) {}

    /**
     * What a guessed figure would mean for the number of panels.
     *
     * @param figure in words
     * @param text as written
     * @param where file, line and column
     * @param half further panels at half of it; null where that could not be tried
     * @param twice further panels at double; null where that could not be tried
     */
    public record GuessedNumber(
            String figure,
            String text,
            String where,
            @Nullable Integer half,
            @Nullable Integer twice) {}

    /**
     * A needle fed by few states.
     *
     * @param panel its panel
     * @param indicator its name
     * @param speed how fast it may turn, in its signal's unit a second
     * @param statesPerSecond states it gets
     * @param step how far it may turn between two, in its signal's unit
     * @param unit its signal's
     */
    public record CoarseMotion(
            String panel, String indicator, double speed, double statesPerSecond, double step, String unit) {}

    /** Whether the segment is fit as it stands: every panel on it keeps its budget with the margin. */
    public boolean fits() {
        return more >= 0 && aside.isEmpty();
    }

    /** The first sentence: the number. */
    public String headline() {
        return sentences().get(0);
    }

    /** What it came to in plain sentences; the first is the number. */
    public List<String> sentences() {
        return new SizeSentences(this).all();
    }
}
