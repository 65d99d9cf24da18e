package dropline.bus.run;

import dropline.protocol.Bytes;
import dropline.protocol.Destination;
import dropline.protocol.NodeEnd;
import dropline.protocol.NodeStatus;
import java.util.function.Supplier;

/** How a node replies to a controller outside: with the bytes that answer what it was really asked. */
final class Asked implements Destination {
    private static final Bytes NOTHING = Bytes.of();

    private final NodeEnd own;
    private final Supplier<NodeStatus> status;
    private final Supplier<int[]> controls;
    private NodeEnd answering;
    private Bytes answer = NOTHING;
    private boolean isOfLastRequest;

    /**
     * @param own the node's end of the pair
     * @param status what it says of itself when it replies
     * @param controls the values it then reports
     */
    Asked(NodeEnd own, Supplier<NodeStatus> status, Supplier<int[]> controls) {
        this.own = own;
        this.status = status;
        this.controls = controls;
        answering = own;
    }

    NodeEnd end() {
        return own;
    }

    /** It was asked again, and replies as this end would: the node's own, or one under another's address. */
    void asked(NodeEnd end) {
        answering = end;
        isOfLastRequest = false;
    }

    /** The reply it makes, which says what is so now unless it was asked something else since. */
    Bytes freshAnswer() {
        if (isOfLastRequest) {
            answer = answering.reply(status.get(), controls.get());
        }
        return answer;
    }

    /** The reply it made last. */
    Bytes answer() {
        return answer;
    }

    /** Makes the reply to what was asked last, and tells its length. */
    @Override
    public int replyChars(int[] picked, int count, double draw) {
        isOfLastRequest = true;
        return freshAnswer().length();
    }

    @Override
    public int pick(long[] pending, int from, int[] picked) {
        throw new UnsupportedOperationException("a node asks for nothing");
    }

    @Override
    public int requestChars(int[] picked, int count) {
        throw new UnsupportedOperationException("a node asks for nothing");
    }

    @Override
    public int longestRequestChars() {
        throw new UnsupportedOperationException("a node asks for nothing");
    }

    @Override
    public int longestReplyChars() {
        throw new UnsupportedOperationException("how long a reply may be hangs on what is asked");
    }

    @Override
    public Bytes encodeRequest(int sequence, int[] picked, int count, long[] values) {
        throw new UnsupportedOperationException("a node asks for nothing");
    }

    @Override
    public Bytes encodeReply(NodeStatus said, int[] picked, int count, int[] controlValues) {
        throw new UnsupportedOperationException("a reply is made when it is asked for");
    }
}
