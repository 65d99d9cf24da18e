package dropline.protocol;

/** A node's end of a pair: it listens, and answers what it was asked last. Not safe for use by several threads. */
public interface NodeEnd extends Listener {

    /**
     * The bytes with which the node answers the request it heard last.
     *
     * @param status what it says of itself, where the protocol has room for it
     * @param controlValues one per control of the node, in number order
     * @throws IllegalStateException if no request to this node was heard
     */
    Bytes reply(NodeStatus status, int[] controlValues);
}
