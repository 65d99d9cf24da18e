package dropline.protocol.sized;

import dropline.protocol.Bytes;
import dropline.protocol.Destination;
import dropline.protocol.NodeStatus;
import dropline.protocol.PendingSlots;
import java.util.List;

/** One node of a sized protocol, or all of them. */
final class SizedDestination implements Destination {
    private final int slots;
    private final int most;
    private final int charsPerSignal;
    private final int overhead;
    private final int plain;
    private final int[] replyChars;
    private final double[] upTo;
    private final int longestReply;

    /**
     * @param overhead characters of a frame that carries state, beside its signals
     * @param plain characters of a frame that carries none; 0 where there is no such frame
     * @param replies empty where nobody replies
     */
    SizedDestination(Sized sized, int slots, int overhead, int plain, List<Sized.ReplyChoice> replies) {
        this.slots = slots;
        this.most = Math.min(slots, sized.maxSignalsPerFrame());
        this.charsPerSignal = sized.charsPerSignal();
        this.overhead = overhead;
        this.plain = plain;
        this.replyChars = new int[replies.size()];
        this.upTo = new double[replies.size()];
        double sum = 0;
        int longest = 0;
        for (int i = 0; i < replyChars.length; i++) {
            replyChars[i] = replies.get(i).chars();
            sum += replies.get(i).probability();
            upTo[i] = sum;
            longest = Math.max(longest, replyChars[i]);
        }
        this.longestReply = longest;
    }

    @Override
    public int pick(long[] pending, int from, int[] picked) {
        int count = 0;
        int slot = PendingSlots.next(pending, from, slots);
        while (slot >= 0 && count < most) {
            picked[count++] = slot;
            slot = PendingSlots.next(pending, slot + 1, slots);
        }
        int end = Math.min(from, slots);
        slot = PendingSlots.next(pending, 0, end);
        while (slot >= 0 && count < most) {
            picked[count++] = slot;
            slot = PendingSlots.next(pending, slot + 1, end);
        }
        return count;
    }

    @Override
    public int requestChars(int[] picked, int count) {
        return count == 0 ? plain : overhead + count * charsPerSignal;
    }

    @Override
    public int replyChars(int[] picked, int count, double draw) {
        for (int i = 0; i < replyChars.length - 1; i++) {
            if (draw < upTo[i]) {
                return replyChars[i];
            }
        }
        // the last choice also takes what rounding left over
        return replyChars.length == 0 ? 0 : replyChars[replyChars.length - 1];
    }

    @Override
    public int longestRequestChars() {
        return Math.max(plain, most == 0 ? 0 : overhead + most * charsPerSignal);
    }

    @Override
    public int longestReplyChars() {
        return longestReply;
    }

    @Override
    public Bytes encodeRequest(int sequence, int[] picked, int count, long[] values) {
        throw onlyLengths();
    }

    @Override
    public Bytes encodeReply(NodeStatus status, int[] picked, int count, int[] controlValues) {
        throw onlyLengths();
    }

    private static UnsupportedOperationException onlyLengths() {
        return new UnsupportedOperationException("a sized protocol has lengths but no bytes");
    }
}
