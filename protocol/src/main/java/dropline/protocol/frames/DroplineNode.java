package dropline.protocol.frames;

import dropline.protocol.AnsweringNode;
import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.Destination;
import dropline.protocol.FirmwareVersion;
import dropline.protocol.Heard;
import dropline.protocol.NodeEnd;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;

/** A node's end: what it answers to a poll, and to the question which firmware it runs. */
final class DroplineNode implements NodeEnd {
    private static final FirmwareVersion UNSAID = new FirmwareVersion(0, 0);

    private final NodeWire node;
    private final DroplineListener listener = new DroplineListener();
    private final NodeEnd polled;
    private boolean isQuestion;

    DroplineNode(NodeWire node, Destination destination) {
        this.node = node;
        polled = new AnsweringNode(node, listener, destination);
    }

    @Override
    public Decoded<Heard> onByte(int next) {
        return noted(polled.onByte(next));
    }

    @Override
    public Decoded<Heard> onSilence(int tenthsOfBit) {
        return noted(polled.onSilence(tenthsOfBit));
    }

    @Override
    public Decoded<Heard> more() {
        return noted(polled.more());
    }

    private Decoded<Heard> noted(Decoded<Heard> decoded) {
        if (decoded instanceof Decoded.Complete<Heard> complete
                && complete.frame().kind() == Heard.Kind.REQUEST
                && complete.frame().address() == node.address()) {
            isQuestion = listener.isQuestion();
        }
        return decoded;
    }

    @Override
    public Bytes reply(NodeStatus status, int[] controlValues) {
        if (!isQuestion) {
            return polled.reply(status, controlValues);
        }
        FirmwareVersion known = node.firmware();
        return DroplineFrames.encode(
                new DroplineFrame.Identity(node.address(), status, known == null ? UNSAID : known));
    }
}
