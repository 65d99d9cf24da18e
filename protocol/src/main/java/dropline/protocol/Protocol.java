package dropline.protocol;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One way to speak on a segment: how a poll, a reply and a state frame are laid out and how long each is. The simulator
 * asks lengths only; bytes exist when {@link Destination#encodeRequest} and its kin are asked for them.
 *
 * <p>A protocol is an immutable description. Lengths are in characters on the wire, delimiters and checks included.
 */
public interface Protocol {

    /** The name written in a pit file: {@code dropline}, {@code modbus-rtu}, {@code sized}, {@code custom}. */
    String name();

    /**
     * Silence that must lie before every frame, in tenths of a bit time at this baud rate and format; 0 where frames
     * are delimited by a character.
     *
     * @param baud bits a second
     */
    int silenceBeforeTenthsOfBit(int baud, CharacterFormat format);

    /** Whether state can be sent to all nodes at once, without a reply. */
    boolean canBroadcast();

    /** Whether a reply tells which state frames its node has, so that the controller sends again what was missed. */
    default boolean acknowledgesState() {
        return false;
    }

    /** Whether a reply tells how its node fares: restarts, errors, its longest loop, refreshes. */
    default boolean reportsStatus() {
        return acknowledgesState();
    }

    /** The question which firmware a node runs; null where this protocol has none. */
    default @Nullable Bytes askFirmware(int address) {
        return null;
    }

    /** Whether frames have known bytes; where not, only their lengths are known. */
    default boolean knowsBytes() {
        return true;
    }

    /** Whether a reply cannot be taken for a request, nor a request for a reply. */
    default boolean marksReplies() {
        return false;
    }

    /** How a receiver knows where a frame begins. */
    Framing framing();

    /** The character that ends a frame, where the next begins after it; 0..255. */
    default int delimiter() {
        return 0;
    }

    /** How a receiver knows where a frame begins. */
    enum Framing {
        /** At the character after a {@link Protocol#delimiter}; anything else before it spoils it. */
        AFTER_DELIMITER,
        /** After a silence; a character that follows another too closely belongs to the same frame. */
        AFTER_SILENCE,
        /** Wherever it is found among other characters. */
        ANYWHERE
    }

    /** How the controller talks to one node. */
    Destination node(NodeWire node);

    /**
     * How the controller sends state to every node at once; the address and the controls of {@code all} are ignored.
     */
    Destination broadcast(NodeWire all);

    /**
     * Listens to a whole segment.
     *
     * @param nodes all that are on it
     * @param baud bits a second
     * @throws UnsupportedOperationException where only lengths are known (the sized protocol)
     */
    Listener listener(List<NodeWire> nodes, int baud, CharacterFormat format);

    /**
     * One node's end of a segment.
     *
     * @param baud bits a second
     * @throws UnsupportedOperationException where only lengths are known (the sized protocol)
     */
    NodeEnd nodeEnd(NodeWire node, int baud, CharacterFormat format);
}
