package dropline.protocol.frames;

import dropline.protocol.Decoded;
import dropline.protocol.Heard;
import dropline.protocol.Listener;
import java.util.List;

/** Hears Dropline frames. */
final class DroplineListener implements Listener {
    private static final Decoded<Heard> NEED_MORE = new Decoded.NeedMore<>();

    private final FrameDecoder decoder = new FrameDecoder();
    private boolean isQuestion;

    /** Whether the last frame asked for a firmware, which is nothing that {@link Heard} says of a request. */
    boolean isQuestion() {
        return isQuestion;
    }

    @Override
    public Decoded<Heard> onByte(int next) {
        return said(decoder.onByte(next));
    }

    @Override
    public Decoded<Heard> onSilence(int tenthsOfBit) {
        return said(decoder.onSilence(tenthsOfBit));
    }

    @Override
    public Decoded<Heard> more() {
        return NEED_MORE;
    }

    private Decoded<Heard> said(Decoded<DroplineFrame> decoded) {
        if (decoded instanceof Decoded.Complete<DroplineFrame> complete) {
            isQuestion = complete.frame() instanceof DroplineFrame.Question;
            return new Decoded.Complete<>(said(complete.frame()), complete.bytesUsed());
        }
        return decoded instanceof Decoded.Rejected<DroplineFrame> rejected
                ? new Decoded.Rejected<>(rejected.reason(), rejected.bytesDropped())
                : NEED_MORE;
    }

    private static Heard said(DroplineFrame frame) {
        if (frame instanceof DroplineFrame.Poll poll) {
            return new Heard(
                    Heard.Kind.REQUEST, poll.address(), poll.sequence(), values(poll.entries()), List.of(), null);
        }
        if (frame instanceof DroplineFrame.Question question) {
            return new Heard(Heard.Kind.REQUEST, question.address(), Heard.NONE, List.of(), List.of(), null);
        }
        if (frame instanceof DroplineFrame.Identity identity) {
            return new Heard(
                    Heard.Kind.REPLY,
                    identity.address(),
                    identity.status().lastSequence(),
                    List.of(),
                    List.of(),
                    identity.status(),
                    identity.firmware());
        }
        if (frame instanceof DroplineFrame.State state) {
            return new Heard(Heard.Kind.BROADCAST, 0, state.sequence(), values(state.entries()), List.of(), null);
        }
        if (frame instanceof DroplineFrame.Reply reply) {
            List<Heard.Value> controls = reply.controls().stream()
                    .map(control -> new Heard.Value(control.number(), control.value()))
                    .toList();
            return new Heard(
                    Heard.Kind.REPLY,
                    reply.address(),
                    reply.status().lastSequence(),
                    List.of(),
                    controls,
                    reply.status());
        }
        throw new AssertionError(frame);
    }

    private static List<Heard.Value> values(List<DroplineFrame.Entry> entries) {
        return entries.stream()
                .map(entry -> new Heard.Value(entry.number(), entry.packed()))
                .toList();
    }
}
