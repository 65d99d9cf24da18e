package dropline.protocol.sized;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dropline.protocol.CharacterFormat;
import dropline.protocol.Destination;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import dropline.protocol.NodeWire.SignalWire;
import dropline.protocol.sized.Sized.ReplyChoice;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

final class SizedTest {
    private static final List<ReplyChoice> EIGHT_OR_FOURTEEN =
            List.of(new ReplyChoice(8, 0.8), new ReplyChoice(14, 0.2));
    private static final Sized SIZED = new Sized(8, EIGHT_OR_FOURTEEN, 6, 4, 10, 35);
    private static final NodeWire TWELVE_SIGNALS =
            new NodeWire(1, Collections.nCopies(12, new SignalWire(1, 2)), List.of());

    @Test
    void stateIsAddedToARequestOrToABroadcastsOverhead() {
        Destination node = SIZED.node(TWELVE_SIGNALS);
        Destination all = SIZED.broadcast(TWELVE_SIGNALS);
        int[] picked = new int[12];

        assertEquals(8, node.requestChars(picked, 0));
        assertEquals(8 + 3 * 4, node.requestChars(picked, 3));
        assertEquals(48, node.longestRequestChars());
        assertEquals(46, all.requestChars(picked, 10));
        assertEquals(46, all.longestRequestChars());
    }

    @Test
    void theDrawChoosesTheReply() {
        Destination node = SIZED.node(TWELVE_SIGNALS);

        assertEquals(8, node.replyChars(new int[0], 0, 0.0));
        assertEquals(8, node.replyChars(new int[0], 0, Math.nextDown(0.8)));
        assertEquals(14, node.replyChars(new int[0], 0, 0.8));
        assertEquals(14, node.replyChars(new int[0], 0, Math.nextDown(1.0)));
        assertEquals(14, node.longestReplyChars());
    }

    @Test
    void nobodyRepliesToABroadcast() {
        Destination all = SIZED.broadcast(TWELVE_SIGNALS);

        assertEquals(0, all.replyChars(new int[12], 3, 0.5));
        assertEquals(0, all.longestReplyChars());
    }

    @Test
    void slotsAreTakenInTurnUpToTheMost() {
        int[] picked = new int[12];

        int count = SIZED.node(TWELVE_SIGNALS).pick(new long[] {0xFFF}, 5, picked);

        assertEquals(10, count);
        assertArrayEquals(new int[] {5, 6, 7, 8, 9, 10, 11, 0, 1, 2, 0, 0}, picked);
    }

    @Test
    void aPendingSlotIsNotTakenTwice() {
        int[] picked = new int[12];

        assertEquals(2, SIZED.node(TWELVE_SIGNALS).pick(new long[] {0b100010}, 5, picked));
        assertEquals(5, picked[0]);
        assertEquals(1, picked[1]);
        assertEquals(0, SIZED.node(TWELVE_SIGNALS).pick(new long[] {0}, 5, picked));
    }

    @Test
    void withoutRoomForSignalsNoStateIsSent() {
        Sized silent = Sized.withReply(8, 8, 6, 4, 0);

        assertFalse(silent.canBroadcast());
        assertEquals(0, silent.node(TWELVE_SIGNALS).pick(new long[] {0xFFF}, 0, new int[12]));
        assertEquals(8, silent.node(TWELVE_SIGNALS).longestRequestChars());
    }

    @Test
    void theGapIsTheOneGiven() {
        assertEquals(35, SIZED.silenceBeforeTenthsOfBit(500_000, CharacterFormat.EIGHT_N_ONE));
    }

    @Test
    void thereAreNoBytes() {
        Destination node = SIZED.node(TWELVE_SIGNALS);
        NodeStatus status = new NodeStatus(0, 0, 0, 0, 0);

        assertThrows(UnsupportedOperationException.class, () -> node.encodeRequest(0, new int[0], 0, new long[0]));
        assertThrows(UnsupportedOperationException.class, () -> node.encodeReply(status, new int[0], 0, new int[0]));
    }

    @Test
    void impossibleLengthsAndProbabilitiesAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Sized(0, EIGHT_OR_FOURTEEN, 6, 4, 10, 0));
        assertThrows(IllegalArgumentException.class, () -> new Sized(8, List.of(), 6, 4, 10, 0));
        assertThrows(IllegalArgumentException.class, () -> new Sized(8, List.of(new ReplyChoice(8, 0.8)), 6, 4, 10, 0));
        assertThrows(IllegalArgumentException.class, () -> new ReplyChoice(8, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> new ReplyChoice(0, 1));
    }
}
