package dropline.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.protocol.NodeWire.SignalWire;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What every protocol with bytes of its own promises of whoever listens. */
public abstract class HearingContract {
    private static final long SEED = 20_261_126L;
    private static final int ROUNDS = 300;
    private static final int BAUD = 115_200;
    private static final NodeStatus STATUS = new NodeStatus(7, 2, 3, 4000, 5);

    /** How many bytes of garbage each listener is fed; {@code -Pnightly} sets many more. */
    private static final long GARBAGE = Garbage.BYTES;

    protected abstract Protocol protocol();

    /** A node that the protocol can speak to. */
    protected abstract NodeWire randomNode(Random random, int address);

    /** Whether a reply says how its node fares. */
    private boolean hasStatus() {
        return protocol().reportsStatus();
    }

    private static Listener quiet(Listener listener) {
        listener.onSilence(Integer.MAX_VALUE);
        return listener;
    }

    private static Heard hear(Listener listener, Bytes bytes, String note) {
        List<Heard> heard = new ArrayList<>();
        for (int i = 0; i < bytes.length(); i++) {
            take(listener, listener.onByte(bytes.at(i)), heard);
        }
        take(listener, listener.onSilence(100_000), heard);
        assertEquals(1, heard.size(), note + " " + bytes);
        return heard.get(0);
    }

    private static void take(Listener listener, Decoded<Heard> first, List<Heard> heard) {
        Decoded<Heard> decoded = first;
        while (!(decoded instanceof Decoded.NeedMore<Heard>)) {
            if (decoded instanceof Decoded.Complete<Heard> complete) {
                heard.add(complete.frame());
            }
            decoded = listener.more();
        }
    }

    @Test
    void aListenerHearsWhatIsAskedAndAnswered() {
        Random random = new Random(SEED);
        for (int round = 0; round < ROUNDS; round++) {
            String note = "seed " + SEED + " round " + round;
            NodeWire first = randomNode(random, 1);
            NodeWire second = randomNode(random, 2);
            Listener listener = quiet(protocol().listener(List.of(first, second), BAUD, CharacterFormat.EIGHT_N_ONE));
            NodeWire node = random.nextBoolean() ? first : second;
            Destination destination = protocol().node(node);
            int[] picked = new int[node.signals().size()];
            long[] pending = {random.nextLong()};
            int count = destination.pick(pending, 0, picked);
            long[] values = random.longs(count, 0, 200).toArray();
            int[] controls = random.ints(node.controls().size(), 0, 65_536).toArray();

            Heard asked = hear(listener, destination.encodeRequest(9, picked, count, values), note);
            Heard answered = hear(listener, destination.encodeReply(STATUS, picked, count, controls), note);

            assertEquals(Heard.Kind.REQUEST, asked.kind(), note);
            assertEquals(node.address(), asked.address(), note);
            for (int i = 0; i < count; i++) {
                SignalWire signal = node.signals().get(picked[i]);
                assertEquals(packed(values[i], signal), valueOf(asked.values(), signal), note);
            }
            assertEquals(Heard.Kind.REPLY, answered.kind(), note);
            assertEquals(node.address(), answered.address(), note);
            assertEquals(hasStatus() ? STATUS : null, answered.status(), note);
            for (int i = 0; i < answered.controls().size(); i++) {
                assertEquals(
                        new Heard.Value(node.controls().get(i).number(), controls[i]),
                        answered.controls().get(i),
                        note);
            }
        }
    }

    private static long packed(long value, SignalWire signal) {
        return SignalPacking.pack(value, signal.valueBytes());
    }

    private static long valueOf(List<Heard.Value> values, SignalWire signal) {
        return packed(
                values.stream()
                        .filter(value -> value.number() == signal.number())
                        .findFirst()
                        .orElseThrow()
                        .value(),
                signal);
    }

    @Test
    void aNodesEndAnswersWhatItWasAskedWithItsControls() {
        Random random = new Random(SEED + 1);
        for (int round = 0; round < ROUNDS; round++) {
            String note = "seed " + SEED + " round " + round;
            NodeWire node = randomNode(random, 3);
            Listener listener = quiet(protocol().listener(List.of(node), BAUD, CharacterFormat.EIGHT_N_ONE));
            NodeEnd end = protocol().nodeEnd(node, BAUD, CharacterFormat.EIGHT_N_ONE);
            quiet(end);
            Bytes poll = protocol().node(node).encodeRequest(9, new int[0], 0, new long[0]);
            int[] controls = random.ints(node.controls().size(), 0, 65_536).toArray();
            hear(listener, poll, note);

            Heard asked = hear(end, poll, note);
            Heard answered = hear(listener, end.reply(STATUS, controls), note);

            assertEquals(3, asked.address(), note);
            assertEquals(Heard.Kind.REPLY, answered.kind(), note);
            assertEquals(node.controls().size(), answered.controls().size(), note);
            for (int i = 0; i < controls.length; i++) {
                assertEquals(controls[i], answered.controls().get(i).value(), note);
            }
        }
    }

    @Test
    void garbageIsHeardWithoutAnError() {
        Random random = new Random(SEED + 2);
        NodeWire node = randomNode(random, 1);
        Listener listener = quiet(protocol().listener(List.of(node), BAUD, CharacterFormat.EIGHT_N_ONE));
        NodeEnd end = protocol().nodeEnd(node, BAUD, CharacterFormat.EIGHT_N_ONE);
        Bytes poll = protocol().node(node).encodeRequest(9, new int[0], 0, new long[0]);
        long accounted = 0;
        for (long fed = 0; fed < GARBAGE; fed++) {
            int next = random.nextInt(3) == 0 ? poll.at(random.nextInt(poll.length())) : random.nextInt(256);
            accounted += used(listener, listener.onByte(next));
            used(end, end.onByte(next));
            if (random.nextInt(40) == 0) {
                int silence = random.nextInt(2_000);
                accounted += used(listener, listener.onSilence(silence));
                used(end, end.onSilence(silence));
            }
            assertTrue(accounted <= fed + 1, "seed " + SEED + " after " + fed + " bytes: " + accounted);
        }
    }

    private static long used(Listener listener, Decoded<Heard> first) {
        long used = 0;
        Decoded<Heard> decoded = first;
        while (!(decoded instanceof Decoded.NeedMore<Heard>)) {
            used += decoded instanceof Decoded.Complete<Heard> complete
                    ? complete.bytesUsed()
                    : ((Decoded.Rejected<Heard>) decoded).bytesDropped();
            decoded = listener.more();
        }
        return used;
    }

    /** Distinct ascending numbers, apart enough for values of two registers. */
    protected static List<Integer> numbers(Random random, int count, int from) {
        List<Integer> numbers = new ArrayList<>();
        int next = from;
        for (int i = 0; i < count; i++) {
            next += 2 + random.nextInt(3);
            numbers.add(next);
        }
        return numbers;
    }
}
