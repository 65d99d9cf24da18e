package dropline.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dropline.protocol.NodeWire.ControlWire;
import dropline.protocol.NodeWire.SignalWire;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What every protocol with bytes of its own promises of its destinations. */
public abstract class DestinationContract {
    private static final long SEED = 20_260_131L;
    private static final int ROUNDS = 400;

    protected abstract Protocol protocol();

    /** Highest number of controls a node may have when their numbers are below 256. */
    protected abstract int mostControls();

    @Test
    void aRequestIsAsLongAsItsBytes() {
        Random random = new Random(SEED);
        for (int round = 0; round < ROUNDS; round++) {
            NodeWire wire = randomNode(random);
            Destination destination = random.nextInt(4) == 0
                    ? protocol().broadcast(wire)
                    : protocol().node(wire);
            int[] picked = new int[wire.signals().size()];
            int count = destination.pick(randomPending(random, picked.length, 3), start(random, picked.length), picked);
            if (count == 0 && destination.longestReplyChars() == 0) {
                continue;
            }

            Bytes bytes = destination.encodeRequest(random.nextInt(256), picked, count, randomValues(random, count));

            assertEquals(bytes.length(), destination.requestChars(picked, count), note(round));
            assertTrue(bytes.length() <= destination.longestRequestChars(), note(round));
        }
    }

    @Test
    void aReplyIsAsLongAsItsBytes() {
        Random random = new Random(SEED + 1);
        for (int round = 0; round < ROUNDS; round++) {
            NodeWire wire = randomNode(random);
            Destination destination = protocol().node(wire);
            int[] picked = new int[wire.signals().size()];
            int count = destination.pick(randomPending(random, picked.length, 3), start(random, picked.length), picked);
            int[] controlValues = random.ints(wire.controls().size(), 0, 65_536).toArray();

            Bytes bytes = destination.encodeReply(new NodeStatus(1, 2, 3, 4000, 5), picked, count, controlValues);

            assertEquals(bytes.length(), destination.replyChars(picked, count, random.nextDouble()), note(round));
            assertTrue(bytes.length() <= destination.longestReplyChars(), note(round));
        }
    }

    @Test
    void theFirstPendingSlotIsPickedFirst() {
        Random random = new Random(SEED + 2);
        for (int round = 0; round < ROUNDS; round++) {
            NodeWire wire = randomNode(random);
            int slots = wire.signals().size();
            long[] pending = randomPending(random, slots, 5);
            int from = start(random, slots);
            int[] picked = new int[slots];

            int count = protocol().node(wire).pick(pending, from, picked);

            int first = PendingSlots.nextWrapping(pending, from, slots);
            assertEquals(first < 0, count == 0, note(round));
            assertTrue(first < 0 || picked[0] == first, note(round));
        }
    }

    @Test
    void everyPendingSlotIsPickedOnceInTheEnd() {
        Random random = new Random(SEED + 3);
        for (int round = 0; round < ROUNDS; round++) {
            NodeWire wire = randomNode(random);
            int slots = wire.signals().size();
            Destination destination = protocol().broadcast(wire);
            long[] pending = randomPending(random, slots, 2);
            int[] picked = new int[slots];
            int from = start(random, slots);

            int frames = 0;
            int count = destination.pick(pending, from, picked);
            while (count > 0) {
                boolean[] seen = new boolean[slots];
                for (int i = 0; i < count; i++) {
                    assertFalse(seen[picked[i]], note(round));
                    seen[picked[i]] = true;
                    pending[picked[i] / 64] &= ~(1L << picked[i]);
                }
                assertTrue(++frames <= slots, note(round));
                count = destination.pick(pending, picked[count - 1] + 1, picked);
            }

            assertEquals(-1, PendingSlots.nextWrapping(pending, 0, slots), note(round));
        }
    }

    @Test
    void askingForLengthsAllocatesNothing() {
        Random random = new Random(SEED + 4);
        NodeWire wire = nodeOf(random, 80, 4);
        Destination destination = protocol().node(wire);
        long[] pending = randomPending(random, 80, 3);
        int[] picked = new int[80];
        askForLengths(destination, pending, picked, 20_000);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();

        long characters = askForLengths(destination, pending, picked, 20_000);

        long allocated = threads.getCurrentThreadAllocatedBytes() - before;
        assertTrue(characters > 0);
        assertTrue(allocated < 20_000, "less than a byte a frame: allocated=" + allocated);
    }

    private static long askForLengths(Destination destination, long[] pending, int[] picked, int times) {
        long characters = 0;
        for (int i = 0; i < times; i++) {
            int count = destination.pick(pending, i % 80, picked);
            characters += destination.requestChars(picked, count) + destination.replyChars(picked, count, 0.5);
        }
        return characters;
    }

    protected NodeWire randomNode(Random random) {
        return nodeOf(random, random.nextInt(90), random.nextInt(mostControls() + 1));
    }

    private static NodeWire nodeOf(Random random, int signalCount, int controlCount) {
        List<SignalWire> signals = new ArrayList<>();
        int number = 256 + random.nextInt(1000);
        for (int i = 0; i < signalCount; i++) {
            int valueBytes = 1 << random.nextInt(3);
            signals.add(new SignalWire(number, valueBytes));
            number += (valueBytes + 1) / 2 + (random.nextInt(6) == 0 ? 1 + random.nextInt(9) : 0);
        }
        List<ControlWire> controls = new ArrayList<>();
        int control = random.nextInt(4);
        for (int i = 0; i < controlCount; i++) {
            controls.add(new ControlWire(control));
            control += 1 + random.nextInt(5);
        }
        return new NodeWire(1 + random.nextInt(247), signals, controls);
    }

    private static long[] randomPending(Random random, int slots, int oneIn) {
        long[] pending = new long[(slots + 63) / 64];
        for (int slot = 0; slot < slots; slot++) {
            if (random.nextInt(oneIn) == 0) {
                pending[slot / 64] |= 1L << slot;
            }
        }
        return pending;
    }

    private static long[] randomValues(Random random, int count) {
        return random.longs(count).toArray();
    }

    private static int start(Random random, int slots) {
        return slots == 0 ? 0 : random.nextInt(slots);
    }

    private static String note(int round) {
        return "seed " + SEED + " round " + round;
    }
}
