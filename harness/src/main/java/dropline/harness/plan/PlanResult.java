package dropline.harness.plan;

import dropline.bus.pit.Controller.StateDelivery;
import dropline.bus.rule.Ruling;
import dropline.harness.size.Fared;
import dropline.harness.size.Tight;
import dropline.harness.verdict.Recording;
import dropline.harness.verdict.RestsOn;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything a plan came to.
 *
 * @param version of this document, {@link #VERSION}
 * @param droplineVersion the program's
 * @param pit the pit's name
 * @param recording what was played
 * @param fromNanos where its busiest stretch begins, on which ways were tried, ns into it
 * @param untilNanos where that ends
 * @param seed of the first run
 * @param seeds how many were tried
 * @param margin the share of every budget that must be left
 * @param offered whether there is a plan that passed
 * @param exact whether every way was tried, so that none that passes is cheaper
 * @param runs how many runs it took to find
 * @param digest of the plan's run over all that is played; empty where none is offered
 * @param before how many shared segments there are now
 * @param segments the plan's, in the order of its pit file; those straight on USB are not among them
 * @param moves what goes where
 * @param dropped segments that are no longer needed
 * @param splits places that lie on several segments
 * @param fewer why one segment less would not do, for each family of boards that speak alike
 * @param hopeless panels and controls that miss their limit even on a segment of their own
 * @param broken laws of copper and supply that no plan mends
 * @param guidance how many pieces of guidance of copper the plan does not follow, by segment, in words
 * @param toBuy what it takes; null where none is offered
 * @param losses what of the recording was left out
 * @param restsOn where the pit's figures come from
 */
public record PlanResult(
        int version,
        String droplineVersion,
        String pit,
        Recording recording,
        long fromNanos,
        long untilNanos,
        long seed,
        int seeds,
        double margin,
        boolean offered,
        boolean exact,
        long runs,
        String digest,
        int before,
        List<PlannedSegment> segments,
        List<Move> moves,
        List<String> dropped,
        List<Split> splits,
        List<Refusal> fewer,
        List<Fared> hopeless,
        List<Ruling> broken,
        List<Ruling> guidance,
        @Nullable ShoppingList toBuy,
        List<String> losses,
        RestsOn restsOn) {

    /** The version of this document. A new figure leaves it; one that goes or changes its meaning raises it. */
    public static final int VERSION = 1;

    public PlanResult {
        segments = List.copyOf(segments);
        moves = List.copyOf(moves);
        dropped = List.copyOf(dropped);
        splits = List.copyOf(splits);
        fewer = List.copyOf(fewer);
        hopeless = List.copyOf(hopeless);
        broken = List.copyOf(broken);
        guidance = List.copyOf(guidance);
        losses = List.copyOf(losses);
    }

    /**
     * A segment of the plan.
     *
     * @param name its name
     * @param like the segment it is like; null for one that is there now
     * @param baud bits a second
     * @param baudBefore what that, or what it is like, has now
     * @param state how state reaches its boards
     * @param stateBefore how it does now
     * @param timeOutNanos how long a reply is waited for, ns
     * @param timeOutBeforeNanos how long it is now, ns
     * @param nodes boards on it
     * @param panels on those
     * @param polledOtherwise boards that are polled otherwise than now: names with their weights
     * @param healthy what came nearest its limit with every board alive; null where nothing moved
     * @param dead the same with any one board dead; null where nothing moved or there is only one
     */
    public record PlannedSegment(
            String name,
            @Nullable String like,
            int baud,
            int baudBefore,
            StateDelivery state,
            StateDelivery stateBefore,
            long timeOutNanos,
            long timeOutBeforeNanos,
            int nodes,
            int panels,
            List<Weight> polledOtherwise,
            @Nullable Tight healthy,
            @Nullable Tight dead) {
        public PlannedSegment {
            polledOtherwise = List.copyOf(polledOtherwise);
        }

        /** What came nearest its limit in any run; null where nothing moved. */
        public @Nullable Tight tightest() {
            return Fits.tighter(healthy, dead);
        }
    }

    /** A board and its polls a cycle. */
    public record Weight(String node, int weight) {}

    /**
     * A board that goes to another segment, or gets another address.
     *
     * @param node its name
     * @param panels on it, by name
     * @param from the segment it is on now
     * @param to the one it goes to
     * @param addressBefore its present address
     * @param address its address then
     */
    public record Move(String node, List<String> panels, String from, String to, int addressBefore, int address) {
        public Move {
            panels = List.copyOf(panels);
        }
    }

    /**
     * A place whose boards lie on several segments.
     *
     * @param place its name
     * @param segments the names of those
     * @param fitsOne whether its boards would fit one segment, if nothing else were on it; they speak differently where
     *     {@code alike} is false
     * @param alike whether its boards speak alike, and so could share one
     */
    public record Split(String place, List<String> segments, boolean alike, boolean fitsOne) {
        public Split {
            segments = List.copyOf(segments);
        }
    }

    /** Whether there is a plan, and nothing that no plan mends. */
    public boolean passes() {
        return offered && hopeless.isEmpty() && broken.isEmpty();
    }

    /** What it came to in plain sentences; the first is the answer. */
    public List<String> sentences() {
        return new PlanSentences(this).all();
    }
}
