package dropline.protocol;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a frame on a pair says, whoever sent it, in the numbers of the pit file.
 *
 * @param address the node asked or replying; 0 for all, or where the frame does not say
 * @param sequence of the state it carries, or the last that a replying node has; {@link #NONE} where it does not say
 * @param values signals carried by a request or a broadcast, in the order sent
 * @param controls told by a reply, in the order sent
 * @param status what a reply tells of its node; null where the protocol has no room for it
 * @param firmware which a reply says its node runs; null where it was not asked
 */
public record Heard(
        Kind kind,
        int address,
        int sequence,
        List<Value> values,
        List<Value> controls,
        @Nullable NodeStatus status,
        @Nullable FirmwareVersion firmware) {
    /** In place of a number that a frame does not hold. */
    public static final int NONE = -1;

    /** What a frame is for. */
    public enum Kind {
        REQUEST,
        BROADCAST,
        REPLY
    }

    /**
     * One signal's or control's value.
     *
     * @param value of a signal, its low bits count, as many as travel: {@link SignalPacking#unpack} finds the rest
     */
    public record Value(int number, long value) {}

    /** One that says nothing of a firmware. */
    public Heard(
            Kind kind,
            int address,
            int sequence,
            List<Value> values,
            List<Value> controls,
            @Nullable NodeStatus status) {
        this(kind, address, sequence, values, controls, status, null);
    }

    public Heard {
        values = List.copyOf(values);
        controls = List.copyOf(controls);
    }
}
