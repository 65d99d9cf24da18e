package dropline.protocol;

/** A node's end of a pair where a reply says the same whatever was asked: a listener, and how the node is spoken to. */
public final class AnsweringNode implements NodeEnd {
    private static final int[] NOTHING = {};

    private final NodeWire node;
    private final Listener listener;
    private final Destination destination;
    private boolean wasAsked;

    public AnsweringNode(NodeWire node, Listener listener, Destination destination) {
        this.node = node;
        this.listener = listener;
        this.destination = destination;
    }

    @Override
    public Decoded<Heard> onByte(int next) {
        return noted(listener.onByte(next));
    }

    @Override
    public Decoded<Heard> onSilence(int tenthsOfBit) {
        return noted(listener.onSilence(tenthsOfBit));
    }

    @Override
    public Decoded<Heard> more() {
        return noted(listener.more());
    }

    private Decoded<Heard> noted(Decoded<Heard> decoded) {
        wasAsked |= decoded instanceof Decoded.Complete<Heard> complete
                && complete.frame().kind() == Heard.Kind.REQUEST
                && complete.frame().address() == node.address();
        return decoded;
    }

    @Override
    public Bytes reply(NodeStatus status, int[] controlValues) {
        if (!wasAsked) {
            throw new IllegalStateException("a node must be asked before it replies: address=" + node.address());
        }
        return destination.encodeReply(status, NOTHING, 0, controlValues);
    }
}
