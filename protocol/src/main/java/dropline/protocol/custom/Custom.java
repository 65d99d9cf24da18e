package dropline.protocol.custom;

import dropline.protocol.AnsweringNode;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Destination;
import dropline.protocol.Listener;
import dropline.protocol.NodeEnd;
import dropline.protocol.NodeWire;
import dropline.protocol.Protocol;
import dropline.protocol.custom.Boundary.Delimiters;
import dropline.protocol.custom.Boundary.Gap;
import dropline.protocol.custom.FrameLayout.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A builder's own protocol, spoken and heard as its layout says.
 *
 * <p>State goes to all nodes in a state frame, or to one with its poll, where the request has signals or there is a
 * request with state. Where frames are escaped their length depends on what they say; the simulator, which asks for
 * lengths only, is then told the mean, rounded up, and {@link #knowsBytes} is false.
 */
public final class Custom implements Protocol {
    private final Layout layout;
    private final boolean escapes;

    private Custom(Layout layout) {
        this.layout = layout;
        escapes =
                layout.frames().stream().anyMatch(f -> EscapeCount.of(layout, f).mayOccur());
    }

    /** @throws IllegalArgumentException where {@link LayoutRules} finds anything wrong, with its texts */
    public static Custom of(Layout layout) {
        List<String> wrong = LayoutRules.of(layout).stream()
                .filter(flaw -> !flaw.isCaution())
                .map(Flaw::toString)
                .toList();
        if (!wrong.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", wrong));
        }
        return new Custom(layout);
    }

    public Layout layout() {
        return layout;
    }

    @Override
    public String name() {
        return "custom";
    }

    @Override
    public int silenceBeforeTenthsOfBit(int baud, CharacterFormat format) {
        return layout.boundary() instanceof Gap gap ? gap.tenthsOfBit(baud, format) : 0;
    }

    @Override
    public boolean canBroadcast() {
        return layout.frame(Kind.STATE).isPresent();
    }

    /** Whether a poll can carry state for its node. */
    public boolean canAddress() {
        return withState().isPresent();
    }

    /** Whether state frames and replies are numbered. */
    @Override
    public boolean acknowledgesState() {
        return isNumbered(Kind.STATE) && isNumbered(Kind.REPLY);
    }

    /** Always false: a layout has no fields for boots, errors and refreshes. */
    @Override
    public boolean reportsStatus() {
        return false;
    }

    @Override
    public boolean knowsBytes() {
        return !escapes;
    }

    @Override
    public boolean marksReplies() {
        FrameLayout reply = frame(Kind.REPLY);
        return layout.frames().stream().allMatch(f -> f.kind() == Kind.REPLY || Telling.apart(layout, f, reply));
    }

    /**
     * {@inheritDoc}
     *
     * <p>Of escaped frames, whose bytes the simulator makes up, it cannot see the end byte.
     */
    @Override
    public Framing framing() {
        if (layout.boundary() instanceof Gap) {
            return Framing.AFTER_SILENCE;
        }
        boolean hasStart = layout.lead() > 0 || !(layout.boundary() instanceof Delimiters);
        return hasStart || escapes ? Framing.ANYWHERE : Framing.AFTER_DELIMITER;
    }

    @Override
    public int delimiter() {
        return layout.boundary() instanceof Delimiters delimiters ? delimiters.end() : 0;
    }

    /**
     * What keeps a node from being spoken to, one sentence a problem; empty when all is well.
     *
     * @param node with the address of one node
     */
    public List<String> check(NodeWire node) {
        Fit fit = new Fit(layout);
        fit.address(node.address());
        fit.frame(frame(Kind.REQUEST), node.signals().size(), signalNumbers(node));
        withState().ifPresent(f -> fit.frame(f, node.signals().size(), signalNumbers(node)));
        fit.frame(frame(Kind.REPLY), node.controls().size(), controlNumbers(node));
        return fit.problems();
    }

    /** What keeps state from being sent to all nodes at once, one sentence a problem; empty when all is well. */
    public List<String> checkBroadcast(NodeWire all) {
        Fit fit = new Fit(layout);
        layout.frame(Kind.STATE).ifPresent(f -> fit.frame(f, all.signals().size(), signalNumbers(all)));
        return fit.problems();
    }

    /** The most signals or controls that fit in a frame of a kind; 0 where it has none. */
    public int room(Kind kind) {
        FrameLayout frame = frame(kind);
        int slots = frame.items().map(Field.Items::slots).orElse(0);
        return frame.items().isEmpty() ? 0 : slots > 0 ? slots : Fit.room(layout, frame);
    }

    /**
     * How the value of a signal is written; empty where no such frame has signals.
     *
     * @param toAll in state for all nodes, else in a poll
     */
    public Optional<NumberForm> valueForm(boolean toAll) {
        Optional<FrameLayout> frame = toAll ? layout.frame(Kind.STATE) : withState();
        return frame.flatMap(FrameLayout::items)
                .flatMap(items -> items.each().stream()
                        .filter(Field.Value.class::isInstance)
                        .map(field -> ((Field.Value) field).form())
                        .findFirst());
    }

    /** @throws IllegalArgumentException where {@link #check} finds problems, with their texts */
    @Override
    public Destination node(NodeWire node) {
        refuse(check(node));
        return new CustomDestination(
                this, node, frame(Kind.REQUEST), withState().orElse(null), frame(Kind.REPLY));
    }

    /** @throws IllegalArgumentException where {@link #checkBroadcast} finds problems, with their texts */
    @Override
    public Destination broadcast(NodeWire all) {
        refuse(checkBroadcast(all));
        NodeWire toAll = new NodeWire(0, all.signals(), List.of());
        return new CustomDestination(this, toAll, null, layout.frame(Kind.STATE).orElse(null), null);
    }

    /** Listens for these frames, or for all where none is named; of two that look the same, for the first. */
    public CustomDecoder decoder(int baud, CharacterFormat format, Kind... kinds) {
        List<FrameLayout> heard = new ArrayList<>();
        for (Kind kind : kinds.length == 0 ? Kind.values() : kinds) {
            layout.frame(kind).ifPresent(heard::add);
        }
        Contents contents = new Contents(layout, heard);
        if (layout.boundary() instanceof Delimiters delimiters) {
            return new DelimitedDecoder(layout, delimiters, contents);
        }
        return layout.boundary() instanceof Gap gap
                ? new GapDecoder(layout, gap.tenthsOfBit(baud, format), contents)
                : new CountedDecoder(layout, heard);
    }

    /** A frame, part by part. */
    public List<Part> parts(CustomFrame frame) {
        return new FrameWriter(layout, frame(frame.kind()), frame).parts();
    }

    /** A frame as it goes over the wire. */
    public Bytes encode(CustomFrame frame) {
        List<Part> parts = parts(frame);
        byte[] all =
                new byte[parts.stream().mapToInt(part -> part.bytes().length()).sum()];
        int at = 0;
        for (Part part : parts) {
            System.arraycopy(part.bytes().toArray(), 0, all, at, part.bytes().length());
            at += part.bytes().length();
        }
        return Bytes.copyOf(all, 0, at);
    }

    private Optional<FrameLayout> withState() {
        return layout.frame(Kind.REQUEST_WITH_STATE)
                .or(() -> layout.frame(Kind.REQUEST).filter(f -> f.items().isPresent()));
    }

    private FrameLayout frame(Kind kind) {
        return layout.frame(kind)
                .orElseThrow(() -> new IllegalArgumentException("there is no such frame: kind=" + kind.word()));
    }

    private boolean isNumbered(Kind kind) {
        return layout.frame(kind).flatMap(f -> f.first(Field.Counter.class)).isPresent();
    }

    private static int[] signalNumbers(NodeWire wire) {
        return wire.signals().stream().mapToInt(NodeWire.SignalWire::number).toArray();
    }

    private static int[] controlNumbers(NodeWire wire) {
        return wire.controls().stream().mapToInt(NodeWire.ControlWire::number).toArray();
    }

    private static void refuse(List<String> problems) {
        if (!problems.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", problems));
        }
    }

    @Override
    public Listener listener(List<NodeWire> nodes, int baud, CharacterFormat format) {
        return new CustomListener(decoder(baud, format), nodes);
    }

    @Override
    public NodeEnd nodeEnd(NodeWire node, int baud, CharacterFormat format) {
        return new AnsweringNode(node, listener(List.of(node), baud, format), node(node));
    }
}
