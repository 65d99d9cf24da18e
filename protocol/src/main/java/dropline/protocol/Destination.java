package dropline.protocol;

/**
 * How the controller talks to one node, or to all: built once for a run, asked for every frame, allocating nothing.
 *
 * <p>Slots are indices into {@link NodeWire#signals()}. A poll may carry state (addressed state); a broadcast carries
 * nothing else. The signals a frame takes are chosen by {@link #pick}; its length follows from the picked slots.
 */
public interface Destination {

    /**
     * Chooses the slots the next frame takes.
     *
     * @param pending one bit a slot, set where a value waits to be sent
     * @param from the slot to look at first, 0 to the number of slots; the search wraps round, so that no slot starves
     * @param picked receives the chosen slots in wire order; at least as long as the number of slots. A protocol that
     *     must send neighbours along (registers between two pending ones) picks those too
     * @return how many slots were picked; 0 when nothing is pending or state cannot be sent here
     */
    int pick(long[] pending, int from, int[] picked);

    /** Characters of a request, or broadcast, that carries the picked slots; {@code count} 0 is a plain poll. */
    int requestChars(int[] picked, int count);

    /**
     * Characters of the node's reply to such a request; for replies of random length, the one drawn.
     *
     * @param draw uniform in [0, 1), used only where the reply's length is random
     */
    int replyChars(int[] picked, int count, double draw);

    /** The longest request this destination can send, in characters. */
    int longestRequestChars();

    /** The longest reply, in characters; 0 for a broadcast. */
    int longestReplyChars();

    /**
     * The bytes of a request.
     *
     * @param sequence the state sequence number, 0..255; ignored where the protocol has none
     * @param values the value of each picked slot, in units of the signal's resolution
     * @throws UnsupportedOperationException where only lengths are known (the sized protocol)
     */
    Bytes encodeRequest(int sequence, int[] picked, int count, long[] values);

    /**
     * The bytes of a reply that reports these control values, one per control of the node in number order.
     *
     * @throws UnsupportedOperationException where only lengths are known (the sized protocol)
     */
    Bytes encodeReply(NodeStatus status, int[] picked, int count, int[] controlValues);
}
