package dropline.bus.run;

import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.Heard;
import dropline.protocol.Listener;
import dropline.protocol.NodeWire;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The controller's end of what emulated boards send, character by character: the replies that it makes of them, and
 * what these say.
 */
final class Replies {
    private final Setting setting;
    private final Listener listener;
    private final Answered answered;
    private final double bitNanos;
    private @Nullable Polling polling;
    private @Nullable EmulatedStation speaker;
    private long lastEndNanos;

    Replies(Setting setting) {
        this.setting = setting;
        bitNanos = 1e9 / setting.segment.baud();
        List<NodeWire> wires = new ArrayList<>();
        for (int node : setting.wiring.nodes()) {
            wires.add(setting.wiring.wireOf(node));
        }
        listener = setting.segment.protocol().listener(wires, setting.segment.baud(), setting.segment.format());
        listener.onSilence(Integer.MAX_VALUE);
        answered = new Answered(setting.layout, setting.wiring, setting.controls, setting.events);
    }

    /** Ties them to the controller that waits for them. */
    void controller(Polling controller) {
        polling = controller;
    }

    private Polling polling() {
        return Objects.requireNonNull(polling);
    }

    /**
     * The pair has been silent after a board for long enough: a frame may have ended, and if none has, nobody knows.
     */
    void silence(EmulatedStation station, long atNanos) {
        speaker = station;
        understand(listener.onSilence(tenths(atNanos - lastEndNanos)), atNanos);
        if (station.voice.untoldNanos() != Voice.NEVER) {
            tellUnknown(station);
        }
    }

    /** Something was sent that nobody understood. */
    private void tellUnknown(EmulatedStation station) {
        Frame request = polling().request();
        boolean isAsked = polling().awaited() == station.position;
        int node = setting.wiring.nodes()[station.position];
        Frame told = isAsked
                ? station.voice.tell(TraceSink.REPLY, node, request.transaction, request.attempt)
                : station.voice.tell(Frame.BABBLE, node, 0, 0);
        if (isAsked) {
            polling().replyWrong(told);
        }
    }

    /** The sample of a character's stop bit: whether the controller has it. */
    void heard(EmulatedStation station, Frame character) {
        boolean isHeard = polling().hears(character);
        silence(character);
        if (isHeard) {
            speaker = station;
            understand(listener.onByte(station.voice.byteOf(character).at(0)), character.heardNanos);
        }
    }

    /** A frame of somebody else's has been heard. */
    void overhear(Frame frame, Bytes bytes) {
        silence(frame);
        speaker = null;
        for (int i = 0; i < bytes.length(); i++) {
            understand(listener.onByte(bytes.at(i)), frame.heardNanos);
        }
    }

    private void silence(Frame next) {
        if (next.startNanos > lastEndNanos) {
            understand(listener.onSilence(tenths(next.startNanos - lastEndNanos)), next.startNanos);
        }
        lastEndNanos = Math.max(lastEndNanos, next.endNanos);
    }

    private int tenths(long nanos) {
        return (int) Math.max(0, Math.min(Integer.MAX_VALUE, Math.round(nanos * 10 / bitNanos)));
    }

    private void understand(Decoded<Heard> first, long nowNanos) {
        Decoded<Heard> decoded = first;
        while (!(decoded instanceof Decoded.NeedMore<Heard>)) {
            if (decoded instanceof Decoded.Complete<Heard> complete
                    && complete.frame().kind() == Heard.Kind.REPLY
                    && speaker != null) {
                replied(speaker, complete.frame(), complete.bytesUsed(), nowNanos);
            }
            decoded = listener.more();
        }
    }

    private void replied(EmulatedStation station, Heard said, int chars, long nowNanos) {
        int asked = polling().awaited();
        int address = asked < 0 ? 0 : setting.segment.nodes().get(asked).address();
        if (asked < 0
                || station.voice.untoldNanos() == Voice.NEVER
                || (said.address() != 0 && said.address() != address)) {
            return;
        }
        Frame request = polling().request();
        long start = station.voice.startNanos(chars);
        Frame reply = station.voice.tell(
                TraceSink.REPLY, setting.wiring.nodes()[asked], request.transaction, request.attempt);
        reply.startNanos = start;
        reply.lastBroadcast = said.status() == null
                ? request.lastBroadcast
                : request.lastBroadcast - (request.lastBroadcast - said.status().lastSequence() & 0xFF);
        answered.take(said, start);
        polling().understood(reply, nowNanos);
    }

    /** The host is told of the controls that the last reply reported. */
    void tell(long atNanos, int position) {
        answered.tell(atNanos, position);
    }

    /** What that reply said of its node is known. */
    void tellStatus(int position, long atNanos) {
        answered.tellStatus(position, atNanos);
    }
}
