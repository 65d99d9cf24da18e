package dropline.protocol.frames;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Destination;
import dropline.protocol.DestinationContract;
import dropline.protocol.NodeStatus;
import dropline.protocol.NodeWire;
import dropline.protocol.NodeWire.ControlWire;
import dropline.protocol.NodeWire.SignalWire;
import dropline.protocol.Protocol;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

final class DroplineDestinationTest extends DestinationContract {
    private static final DroplineFrames FRAMES = DroplineFrames.create();

    @Override
    protected Protocol protocol() {
        return FRAMES;
    }

    @Override
    protected int mostControls() {
        return 16;
    }

    @Test
    void aPlainPollTakesSevenCharactersAndAReplyTwelve() {
        Destination node = FRAMES.node(new NodeWire(5, List.of(), List.of()));

        assertEquals(7, node.requestChars(new int[0], 0));
        assertEquals(12, node.replyChars(new int[0], 0, 0));
    }

    @Test
    void aFrameIsFilledUpToSixtyTwoBytes() {
        Destination all = FRAMES.broadcast(new NodeWire(0, Collections.nCopies(20, new SignalWire(9, 2)), List.of()));
        int[] picked = new int[20];

        int count = all.pick(new long[] {0xFFFFF}, 18, picked);

        assertEquals(13, count);
        assertEquals(59, all.requestChars(picked, count));
        assertEquals(59, all.longestRequestChars());
        assertArrayEquals(new int[] {18, 19, 0, 1}, Arrays.copyOf(picked, 4));
    }

    @Test
    void theLongestRequestUsesWhatFitsBest() {
        List<SignalWire> signals = new ArrayList<>(Collections.nCopies(20, new SignalWire(9, 2)));
        signals.add(new SignalWire(10, 1));

        assertEquals(62, FRAMES.broadcast(new NodeWire(0, signals, List.of())).longestRequestChars());
    }

    @Test
    void aFrameMayBeFilledToTheLastByte() {
        List<SignalWire> signals = new ArrayList<>(Collections.nCopies(13, new SignalWire(9, 2)));
        signals.add(new SignalWire(10, 1));
        Destination all = FRAMES.broadcast(new NodeWire(0, signals, List.of()));
        int[] picked = new int[14];

        assertEquals(14, all.pick(new long[] {0x3FFF}, 0, picked));
        assertEquals(62, all.encodeRequest(0, picked, 14, new long[14]).length());
    }

    @Test
    void requestsDecodeToWhatWasSent() {
        NodeWire wire = new NodeWire(
                7, List.of(new SignalWire(2, 1), new SignalWire(300, 2), new SignalWire(16_383, 4)), List.of());
        long[] values = {-1, -2, 70_000};

        Bytes poll = FRAMES.node(wire).encodeRequest(9, new int[] {0, 1, 2}, 3, values);
        Bytes state = FRAMES.broadcast(wire).encodeRequest(10, new int[] {1}, 1, new long[] {5});

        assertEquals(
                new DroplineFrame.Poll(
                        7,
                        9,
                        List.of(
                                new DroplineFrame.Entry(2, 1, 0xFF),
                                new DroplineFrame.Entry(300, 2, 0xFFFE),
                                new DroplineFrame.Entry(16_383, 4, 70_000))),
                FrameDecoderTest.decode(poll));
        assertEquals(
                new DroplineFrame.State(10, List.of(new DroplineFrame.Entry(300, 2, 5))),
                FrameDecoderTest.decode(state));
    }

    @Test
    void repliesDecodeToWhatWasSaid() {
        NodeStatus status = new NodeStatus(1, 2, 3, 40_000, 5);
        NodeWire near = new NodeWire(7, List.of(), List.of(new ControlWire(3), new ControlWire(255)));
        NodeWire far = new NodeWire(7, List.of(), List.of(new ControlWire(3), new ControlWire(256)));

        Bytes shortNumbers = FRAMES.node(near).encodeReply(status, new int[0], 0, new int[] {1, 65_535});
        Bytes longNumbers = FRAMES.node(far).encodeReply(status, new int[0], 0, new int[] {1, -1});

        assertEquals(
                new DroplineFrame.Reply(
                        7,
                        status,
                        false,
                        List.of(new DroplineFrame.Control(3, 1), new DroplineFrame.Control(255, 65_535))),
                FrameDecoderTest.decode(shortNumbers));
        assertEquals(
                new DroplineFrame.Reply(
                        7,
                        status,
                        true,
                        List.of(new DroplineFrame.Control(3, 1), new DroplineFrame.Control(256, 65_535))),
                FrameDecoderTest.decode(longNumbers));
    }

    @Test
    void moreControlsThanAReplyHoldsAreNamedWithTheLimit() {
        assertNull(DroplineFrames.checkFits(withControls(16, 0)));
        assertEquals(
                "a reply holds at most 16 controls when their numbers take 1 byte: controls=17",
                DroplineFrames.checkFits(withControls(17, 0)));
        assertNull(DroplineFrames.checkFits(withControls(12, 250)));
        assertEquals(
                "a reply holds at most 12 controls when their numbers take 2 bytes (one above 255): controls=13",
                DroplineFrames.checkFits(withControls(13, 250)));
        assertThrows(IllegalArgumentException.class, () -> FRAMES.node(withControls(17, 0)));
    }

    @Test
    void addressesAndNumbersOutOfRangeAreNamed() {
        assertEquals(
                "node address must be 1..255: address=0",
                DroplineFrames.checkFits(new NodeWire(0, List.of(), List.of())));
        assertEquals(
                "a signal number in a Dropline frame must be 0..16383: number=16384",
                DroplineFrames.checkFits(new NodeWire(1, List.of(new SignalWire(16_384, 1)), List.of())));
    }

    @Test
    void numbersWrittenTwiceAreNamed() {
        assertEquals(
                "a node's signal numbers must differ and ascend: number=4 after 4",
                DroplineFrames.checkFits(
                        new NodeWire(1, List.of(new SignalWire(4, 1), new SignalWire(4, 2)), List.of())));
        assertEquals(
                "a node's control numbers must differ and ascend: number=2 after 3",
                DroplineFrames.checkFits(new NodeWire(1, List.of(), List.of(new ControlWire(3), new ControlWire(2)))));
    }

    @Test
    void framesNeedNoSilenceBeforeThem() {
        assertEquals(0, FRAMES.silenceBeforeTenthsOfBit(9600, CharacterFormat.EIGHT_N_ONE));
    }

    @Test
    void nobodyRepliesToAStateFrame() {
        Destination all = FRAMES.broadcast(new NodeWire(0, List.of(), List.of()));
        NodeStatus status = new NodeStatus(0, 0, 0, 0, 0);

        assertEquals(0, all.replyChars(new int[0], 0, 0));
        assertThrows(UnsupportedOperationException.class, () -> all.encodeReply(status, new int[0], 0, new int[0]));
    }

    private static NodeWire withControls(int count, int first) {
        List<ControlWire> controls = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            controls.add(new ControlWire(first + i));
        }
        return new NodeWire(1, List.of(), controls);
    }
}
