package dropline.protocol.sized;

import dropline.protocol.CharacterFormat;
import dropline.protocol.Destination;
import dropline.protocol.Listener;
import dropline.protocol.NodeEnd;
import dropline.protocol.NodeWire;
import dropline.protocol.Protocol;
import java.util.List;

/**
 * A protocol known by its lengths alone, for a builder who knows no more than that, and for reference buses.
 *
 * <p>A plain poll takes {@code requestChars}. A poll that carries state takes {@code requestChars + signals *
 * charsPerSignal}: the overhead is the request itself. A broadcast takes {@code stateOverheadChars + signals *
 * charsPerSignal}. Signals are chosen in turn, up to {@code maxSignalsPerFrame}.
 *
 * @param requestChars characters of a plain poll, 1 or more
 * @param replies the lengths a reply may have, with probabilities that sum to 1
 * @param stateOverheadChars characters of a broadcast beside its signals, 0 or more
 * @param charsPerSignal characters a signal adds to a frame, 1 or more
 * @param maxSignalsPerFrame 0 or more; 0 where state cannot be sent at all
 * @param gapBeforeTenthsOfBit silence before every frame, in tenths of a bit time, 0 or more
 */
public record Sized(
        int requestChars,
        List<ReplyChoice> replies,
        int stateOverheadChars,
        int charsPerSignal,
        int maxSignalsPerFrame,
        int gapBeforeTenthsOfBit)
        implements Protocol {

    private static final double SUM_TOLERANCE = 1e-9;

    /**
     * One length a reply may have.
     *
     * @param chars 1 or more
     * @param probability above 0, at most 1
     */
    public record ReplyChoice(int chars, double probability) {
        public ReplyChoice {
            atLeast(1, chars, "chars");
            if (!(probability > 0 && probability <= 1)) {
                throw new IllegalArgumentException(
                        "probability must be above 0 and at most 1: probability=" + probability);
            }
        }
    }

    public Sized {
        replies = List.copyOf(replies);
        atLeast(1, requestChars, "requestChars");
        atLeast(0, stateOverheadChars, "stateOverheadChars");
        atLeast(1, charsPerSignal, "charsPerSignal");
        atLeast(0, maxSignalsPerFrame, "maxSignalsPerFrame");
        atLeast(0, gapBeforeTenthsOfBit, "gapBeforeTenthsOfBit");
        double sum = 0;
        for (ReplyChoice reply : replies) {
            sum += reply.probability();
        }
        if (Math.abs(sum - 1) > SUM_TOLERANCE) {
            throw new IllegalArgumentException("reply probabilities must sum to 1: sum=" + sum);
        }
    }

    /** Replies of one length. */
    public static Sized withReply(
            int requestChars, int replyChars, int stateOverheadChars, int charsPerSignal, int maxSignalsPerFrame) {
        return new Sized(
                requestChars,
                List.of(new ReplyChoice(replyChars, 1)),
                stateOverheadChars,
                charsPerSignal,
                maxSignalsPerFrame,
                0);
    }

    @Override
    public String name() {
        return "sized";
    }

    @Override
    public int silenceBeforeTenthsOfBit(int baud, CharacterFormat format) {
        return gapBeforeTenthsOfBit;
    }

    @Override
    public boolean canBroadcast() {
        return maxSignalsPerFrame > 0;
    }

    @Override
    public boolean knowsBytes() {
        return false;
    }

    @Override
    public Framing framing() {
        return gapBeforeTenthsOfBit > 0 ? Framing.AFTER_SILENCE : Framing.ANYWHERE;
    }

    @Override
    public Destination node(NodeWire node) {
        return new SizedDestination(this, node.signals().size(), requestChars, requestChars, replies);
    }

    @Override
    public Destination broadcast(NodeWire all) {
        return new SizedDestination(this, all.signals().size(), stateOverheadChars, 0, List.of());
    }

    private static void atLeast(int least, int value, String name) {
        if (value < least) {
            throw new IllegalArgumentException(name + " must be at least " + least + ": " + name + "=" + value);
        }
    }

    @Override
    public Listener listener(List<NodeWire> nodes, int baud, CharacterFormat format) {
        throw new UnsupportedOperationException("only the lengths of sized frames are known: there is nothing to hear");
    }

    @Override
    public NodeEnd nodeEnd(NodeWire node, int baud, CharacterFormat format) {
        throw new UnsupportedOperationException("only the lengths of sized frames are known: there is nothing to say");
    }
}
