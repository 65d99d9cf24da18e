package dropline.harness.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.frames.DroplineFrame;
import dropline.protocol.frames.DroplineFrames;
import dropline.protocol.frames.FrameDecoder;
import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What every way to a pair promises, with the modelled node of {@link OneNode} at its other end. */
@Timeout(60)
abstract class LinkContract {
    private static final long MILLI = 1_000_000L;
    private static final long LONG = 5_000 * MILLI;

    /** A link to the node, which answers already. */
    abstract Link link() throws IOException;

    private static Bytes poll(int sequence) {
        return DroplineFrames.encode(new DroplineFrame.Poll(OneNode.ADDRESS, sequence, List.of()));
    }

    private static long send(Link link, Bytes bytes) throws IOException {
        return link.send(bytes.toArray(), 0, bytes.length());
    }

    /** The next whole frame, or null at the deadline. */
    private static @Nullable DroplineFrame await(Link link, FrameDecoder decoder, long deadline) throws IOException {
        for (Arrival arrival = link.await(deadline); arrival != null; arrival = link.await(deadline)) {
            if (!(arrival instanceof Arrival.Received received)) {
                continue;
            }
            DroplineFrame frame = null;
            for (int i = 0; i < received.bytes().length(); i++) {
                if (decoder.onByte(received.bytes().at(i)) instanceof Decoded.Complete<DroplineFrame> complete) {
                    frame = complete.frame();
                }
            }
            if (frame != null) {
                return frame;
            }
        }
        return null;
    }

    @Test
    void whatIsSentIsAnsweredByTheNodeAtTheOtherEnd() throws IOException {
        try (Link link = link()) {
            FrameDecoder decoder = new FrameDecoder();
            for (int i = 0; i < 20; i++) {
                long sent = send(link, poll(i));

                DroplineFrame answer = await(link, decoder, link.now() + LONG);

                DroplineFrame.Reply reply = (DroplineFrame.Reply) answer;
                assertNotNull(reply, "poll " + i);
                assertEquals(OneNode.ADDRESS, reply.address());
                assertTrue(link.now() > sent);
                // the last stop bit is not over when its character is there
                assertNull(link.await(link.now() + MILLI));
            }
        }
    }

    @Test
    void whatIsSentArrivesInOrderHoweverMuchItIs() throws IOException {
        try (Link link = link()) {
            FrameDecoder decoder = new FrameDecoder();
            for (int i = 0; i < 60; i++) {
                send(
                        link,
                        DroplineFrames.encode(
                                new DroplineFrame.State(i + 1, List.of(new DroplineFrame.Entry(1, 1, i % 2)))));
            }
            send(link, poll(0));

            DroplineFrame.Reply reply = (DroplineFrame.Reply) await(link, decoder, link.now() + LONG);

            assertNotNull(reply);
            assertEquals(60, reply.status().lastSequence());
            assertEquals(0, reply.status().receiveErrors());
        }
    }

    @Test
    void nothingComesAtTheDeadlineAndNotBefore() throws IOException {
        try (Link link = link()) {
            long deadline = link.now() + 30 * MILLI;

            Arrival none = link.await(deadline);

            assertNull(none);
            assertTrue(link.now() >= deadline, link.now() + " before " + deadline);
        }
    }

    @Test
    void aDeadlineThatHasPassedIsNotWaitedFor() throws IOException {
        try (Link link = link()) {
            assertNull(link.await(link.now() - 1));
        }
    }

    @Test
    void whatHasArrivedIsThereWhateverTheDeadline() throws IOException {
        try (Link link = link()) {
            send(link, poll(1));
            Arrival first = link.await(link.now() + LONG);
            while (first instanceof Arrival.Back) {
                first = link.await(link.now() + LONG);
            }

            assertTrue(first instanceof Arrival.Received, String.valueOf(first));
        }
    }

    @Test
    void itSaysWhereItLeads() throws IOException {
        try (Link link = link()) {
            assertTrue(link.where().length() > 3, link.where());
        }
    }

    @Test
    void itMayBeClosedTwice() throws IOException {
        Link link = link();
        link.close();

        link.close();
    }
}
