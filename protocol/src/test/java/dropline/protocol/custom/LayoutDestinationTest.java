package dropline.protocol.custom;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.protocol.CharacterFormat;
import dropline.protocol.Destination;
import dropline.protocol.DestinationContract;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import dropline.protocol.NodeWire.ControlWire;
import dropline.protocol.NodeWire.SignalWire;
import dropline.protocol.Protocol;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

final class LayoutDestinationTest {

    @Nested
    final class FramesWithALength extends DestinationContract {
        @Override
        protected Protocol protocol() {
            return Examples.custom(Examples.COUNTED);
        }

        @Override
        protected int mostControls() {
            return 20;
        }
    }

    @Nested
    final class LinesOfText extends DestinationContract {
        @Override
        protected Protocol protocol() {
            return Examples.custom(Examples.LINES);
        }

        @Override
        protected int mostControls() {
            return 15;
        }
    }

    @Nested
    final class AllSignalsEveryTime extends DestinationContract {
        @Override
        protected Protocol protocol() {
            return Examples.custom(Examples.GAPS);
        }

        @Override
        protected int mostControls() {
            return 20;
        }
    }

    @Test
    void aPlainPollOfAllSignalsIsAsLongAsOneThatCarriesThem() {
        NodeWire wire = new NodeWire(3, List.of(new SignalWire(1, 2), new SignalWire(2, 2)), List.of());
        Destination node = Examples.custom(Examples.GAPS).node(wire);

        assertEquals(12, node.requestChars(new int[0], 0));
        assertEquals(12, node.requestChars(new int[] {1, 0}, 2));
        assertEquals(
                "03 10 FF FF FF FE 00 00 00 05 FB EC",
                node.encodeRequest(0, new int[] {1, 0}, 2, new long[] {5, -2}).toString());
    }

    @Test
    void escapedFramesAreReckonedAtTheirMeanAndNeverPassTheirLongest() {
        Custom custom = Examples.custom(Examples.ESCAPED);
        NodeWire wire =
                new NodeWire(9, List.of(new SignalWire(1, 4), new SignalWire(2, 4)), List.of(new ControlWire(1)));
        Destination all = custom.broadcast(wire);
        int[] picked = {0, 1};
        Random random = new Random(5);

        long sum = 0;
        for (int i = 0; i < 20_000; i++) {
            int length = all.encodeRequest(
                            random.nextInt(256), picked, 2, random.longs(2).toArray())
                    .length();
            assertTrue(length <= all.longestRequestChars());
            sum += length;
        }

        double mean = sum / 20_000.0;
        int reckoned = all.requestChars(picked, 2);
        assertTrue(reckoned >= mean && reckoned < mean + 1, () -> "mean=" + mean + " reckoned=" + reckoned);
        assertFalse(custom.knowsBytes());
    }

    @Test
    void whatTheLayoutSaysIsAnsweredTruthfully() {
        Custom counted = Examples.custom(Examples.COUNTED);
        Custom lines = Examples.custom(Examples.LINES);
        Custom gaps = Examples.custom(Examples.GAPS);

        assertEquals(Protocol.Framing.ANYWHERE, counted.framing());
        assertEquals(Protocol.Framing.AFTER_DELIMITER, lines.framing());
        assertEquals('\n', lines.delimiter());
        assertEquals(Protocol.Framing.AFTER_SILENCE, gaps.framing());
        assertEquals(250, gaps.silenceBeforeTenthsOfBit(9600, CharacterFormat.EIGHT_N_ONE));
        assertTrue(counted.acknowledgesState() && !lines.acknowledgesState());
        assertTrue(counted.marksReplies() && lines.marksReplies() && gaps.marksReplies());
        assertTrue(counted.canAddress()
                && lines.canAddress()
                && !Examples.custom(Examples.FREE).canAddress());
        assertTrue(lines.knowsBytes());
    }

    @Test
    void aNodeThatCannotBeSpokenToIsRefusedWithTheReasons() {
        NodeWire wire = new NodeWire(300, List.of(new SignalWire(1, 2)), List.of(new ControlWire(300)));

        List<String> problems = Examples.custom(Examples.COUNTED).check(wire);

        assertEquals(
                List.of(
                        "the address of a request is uint8, which does not hold 300",
                        "the address of a reply is uint8, which does not hold 300",
                        "the number of a reply is uint8, which does not hold 300"),
                problems);
        assertThrows(
                IllegalArgumentException.class,
                () -> Examples.custom(Examples.COUNTED).node(wire));
    }

    @Test
    void aRepliesCounterIsThatOfTheLastStateApplied() {
        Destination node = Examples.custom(Examples.COUNTED).node(new NodeWire(7, List.of(), List.of()));

        byte[] reply = node.encodeReply(new NodeStatus(0x42, 0, 0, 0, 0), new int[0], 0, new int[0])
                .toArray();

        assertEquals(0x42, reply[4]);
        assertArrayEquals(new byte[] {(byte) 0xA5, 0x5A, 0x33, 7}, java.util.Arrays.copyOf(reply, 4));
    }
}
