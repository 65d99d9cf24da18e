package dropline.protocol.frames;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.Decoded.Reason;
import dropline.protocol.FirmwareVersion;
import dropline.protocol.Garbage;
import dropline.protocol.NodeStatus;
import dropline.protocol.cobs.Cobs;
import dropline.protocol.crc.Crc;
import dropline.protocol.crc.CrcCatalogue;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

final class FrameDecoderTest {
    private static final DroplineFrame POLL =
            new DroplineFrame.Poll(7, 9, List.of(new DroplineFrame.Entry(300, 2, 0x00FE)));
    private static final DroplineFrame STATE =
            new DroplineFrame.State(0, List.of(new DroplineFrame.Entry(0, 4, 0), new DroplineFrame.Entry(1, 1, 8)));
    private static final DroplineFrame REPLY =
            new DroplineFrame.Reply(7, new NodeStatus(9, 0, 0, 0, 0), false, List.of(new DroplineFrame.Control(1, 2)));

    private static final DroplineFrame QUESTION = new DroplineFrame.Question(7);
    private static final DroplineFrame IDENTITY =
            new DroplineFrame.Identity(7, new NodeStatus(9, 2, 1, 3, 4), new FirmwareVersion(1, 4));

    /** Worked by hand from the layout in the class comment; the check by the catalogue's CRC-16/IBM-3740. */
    @Test
    void aPollLiesOnTheWireAsDescribed() {
        int check = (int) new Crc(CrcCatalogue.CRC_16_IBM_3740).of(Bytes.of(0x01, 0x07, 0x09, 0x41, 0x2C, 0x00, 0xFE));

        assertEquals(
                Bytes.of(0x06, 0x01, 0x07, 0x09, 0x41, 0x2C, 0x04, 0xFE, check >> 8, check, 0x00),
                DroplineFrames.encode(POLL));
    }

    /** By hand as well: status of 9, 2, 1, 0x0003 and 4, then 1.4. */
    @Test
    void aQuestionAndItsAnswerLieOnTheWireAsDescribed() {
        Crc crc = new Crc(CrcCatalogue.CRC_16_IBM_3740);
        int question = (int) crc.of(Bytes.of(0x03, 0x07, 0x00));
        int identity = (int) crc.of(Bytes.of(0x83, 0x07, 0x09, 0x02, 0x01, 0x00, 0x03, 0x04, 0x01, 0x04));

        assertEquals(Bytes.of(0x03, 0x03, 0x07, 0x03, question >> 8, question, 0x00), DroplineFrames.encode(QUESTION));
        assertEquals(
                Bytes.of(0x06, 0x83, 0x07, 0x09, 0x02, 0x01, 0x07, 0x03, 0x04, 0x01, 0x04, identity >> 8, identity, 0),
                DroplineFrames.encode(IDENTITY));
    }

    @Test
    void aQuestionOrAnswerOfAnotherLengthIsRejected() {
        assertReason(Reason.BAD_LENGTH, 0x03, 0x07, 0x00, 0x00);
        assertReason(Reason.BAD_ADDRESS, 0x03, 0x00, 0x00);
        assertReason(Reason.BAD_LENGTH, 0x83, 0x07, 0x09, 0x02, 0x01, 0x00, 0x03, 0x04, 0x01);
        assertReason(Reason.BAD_LENGTH, 0x83, 0x07, 0x09, 0x02, 0x01, 0x00, 0x03, 0x04, 0x01, 0x04, 0x05);
    }

    @Test
    void framesInARowAreAllFound() {
        FrameDecoder decoder = new FrameDecoder();
        List<DroplineFrame> sent = List.of(POLL, REPLY, QUESTION, IDENTITY, STATE, POLL);
        List<DroplineFrame> found = new ArrayList<>();
        for (DroplineFrame frame : sent) {
            for (Decoded<DroplineFrame> result : feed(decoder, DroplineFrames.encode(frame))) {
                found.add(complete(result));
            }
        }
        assertEquals(sent, found);
    }

    @Test
    void aFrameIsCompleteAtItsDelimiterAndNotBefore() {
        Bytes wire = DroplineFrames.encode(POLL);
        FrameDecoder decoder = new FrameDecoder();
        for (int i = 0; i < wire.length() - 1; i++) {
            assertInstanceOf(Decoded.NeedMore.class, decoder.onByte(wire.at(i)));
        }
        assertEquals(new Decoded.Complete<>(POLL, wire.length()), decoder.onByte(0));
    }

    @Test
    void silenceAtAnyPlaceChangesNothing() {
        Bytes wire = DroplineFrames.encode(STATE);
        for (int split = 0; split < wire.length(); split++) {
            FrameDecoder decoder = new FrameDecoder();
            Decoded<DroplineFrame> last = new Decoded.NeedMore<>();
            for (int i = 0; i < wire.length(); i++) {
                if (i == split) {
                    assertInstanceOf(Decoded.NeedMore.class, decoder.onSilence(1_000_000));
                }
                last = decoder.onByte(wire.at(i));
            }
            assertEquals(STATE, complete(last));
        }
        assertThrows(IllegalArgumentException.class, () -> new FrameDecoder().onSilence(-1));
    }

    @Test
    void everySingleBitFlipIsNoticedAndTheFrameAfterTheNextDelimiterIsFound() {
        for (DroplineFrame frame : List.of(POLL, STATE, REPLY)) {
            Bytes wire = DroplineFrames.encode(frame);
            for (int bit = 0; bit < 8 * wire.length(); bit++) {
                byte[] flipped = wire.toArray();
                flipped[bit / 8] ^= (byte) (1 << bit % 8);
                FrameDecoder decoder = new FrameDecoder();

                for (Decoded<DroplineFrame> result : feed(decoder, Bytes.copyOf(flipped, 0, flipped.length))) {
                    assertInstanceOf(Decoded.Rejected.class, result, "bit " + bit + " of " + wire);
                }

                decoder.onByte(0);
                assertEquals(List.of(REPLY), frames(feed(decoder, DroplineFrames.encode(REPLY))));
            }
        }
    }

    @Test
    void everyTruncationIsRejectedAndTheNextFrameFound() {
        Bytes wire = DroplineFrames.encode(POLL);
        for (int kept = 1; kept < wire.length() - 1; kept++) {
            FrameDecoder decoder = new FrameDecoder();
            feed(decoder, Bytes.copyOf(wire.toArray(), 0, kept));

            Decoded<DroplineFrame> ended = decoder.onByte(0);

            assertInstanceOf(Decoded.Rejected.class, ended, "kept " + kept);
            assertEquals(List.of(STATE), frames(feed(decoder, DroplineFrames.encode(STATE))));
        }
    }

    @Test
    void aFrameWithoutItsBeginningIsRejected() {
        Bytes wire = DroplineFrames.encode(POLL);
        for (int lost = 1; lost < wire.length() - 1; lost++) {
            List<Decoded<DroplineFrame>> results =
                    feed(new FrameDecoder(), Bytes.copyOf(wire.toArray(), lost, wire.length() - lost));

            assertEquals(1, results.size());
            assertInstanceOf(Decoded.Rejected.class, results.get(0), "lost " + lost);
        }
    }

    @Test
    void zerosInARowAreIdle() {
        FrameDecoder decoder = new FrameDecoder();

        assertEquals(List.of(), feed(decoder, Bytes.of(0, 0, 0)));
        assertEquals(List.of(POLL), frames(feed(decoder, DroplineFrames.encode(POLL))));
    }

    @Test
    void moreThanSixtyTwoBytesAreTooLong() {
        FrameDecoder decoder = new FrameDecoder();
        for (int i = 0; i < 62; i++) {
            decoder.onByte(1);
        }
        assertEquals(new Decoded.Rejected<>(Reason.TOO_LONG, 63), decoder.onByte(0));

        for (int i = 0; i < 61; i++) {
            decoder.onByte(1);
        }
        assertEquals(new Decoded.Rejected<>(Reason.BAD_CHECK, 62), decoder.onByte(0));
    }

    @Test
    void soundChecksAroundWrongContentsAreRejectedWithTheirReason() {
        assertReason(Reason.TOO_SHORT, 0x01, 0x07);
        assertReason(Reason.BAD_KIND, 0x04, 0x07, 0x00);
        assertReason(Reason.BAD_KIND, 0x41, 0x07, 0x00);
        assertReason(Reason.BAD_ADDRESS, 0x01, 0x00, 0x00);
        assertReason(Reason.BAD_ADDRESS, 0x02, 0x07, 0x00);
        assertReason(Reason.BAD_ADDRESS, 0x81, 0x00, 1, 2, 3, 4, 5, 6);
        assertReason(Reason.TOO_SHORT, 0x81, 0x07, 1, 2, 3, 4, 5);
        assertReason(Reason.BAD_LENGTH, 0x81, 0x07, 1, 2, 3, 4, 5, 6, 7);
        assertReason(Reason.BAD_LENGTH, 0x01, 0x07, 0x00, 0x40, 0x01, 0x05);
        assertReason(Reason.BAD_LENGTH, 0x01, 0x07, 0x00, 0x40);
        assertReason(Reason.BAD_VALUE, 0x01, 0x07, 0x00, 0xC0, 0x01, 0x05);
    }

    @Test
    void anyStreamOfBytesIsSurvivedAndAccountedFor() {
        long seed = 62;
        Random random = new Random(seed);
        FrameDecoder decoder = new FrameDecoder();
        long accounted = 0;
        long idle = 0;
        boolean afterZero = true;
        int total = 400_000;
        for (int i = 0; i < total; i++) {
            int next = random.nextInt(12) == 0 ? 0 : random.nextInt(256);
            idle += next == 0 && afterZero ? 1 : 0;
            afterZero = next == 0;
            accounted += bytes(decoder.onByte(next));
        }
        accounted += bytes(decoder.onByte(0)) - (afterZero ? 0 : 1);
        assertEquals(total, accounted + idle, "seed " + seed);

        assertEquals(List.of(STATE), frames(feed(decoder, DroplineFrames.encode(STATE))));
    }

    @Test
    void randomFramesComeBackThroughDamagedNeighbours() {
        long seed = 63;
        Random random = new Random(seed);
        FrameDecoder decoder = new FrameDecoder();
        for (int round = 0; round < 5000; round++) {
            byte[] garbage = new byte[random.nextInt(90)];
            random.nextBytes(garbage);
            feed(decoder, Bytes.copyOf(garbage, 0, garbage.length));
            decoder.onByte(0);
            DroplineFrame frame = randomFrame(random);

            List<Decoded<DroplineFrame>> results = feed(decoder, DroplineFrames.encode(frame));

            assertEquals(List.of(frame), frames(results), "seed " + seed + " round " + round);
        }
    }

    @Test
    void framesThatCannotExistAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new DroplineFrame.Poll(0, 0, List.of()));
        assertThrows(IllegalArgumentException.class, () -> new DroplineFrame.State(256, List.of()));
        assertThrows(IllegalArgumentException.class, () -> new DroplineFrame.Entry(1, 1, 256));
        assertThrows(IllegalArgumentException.class, () -> new DroplineFrame.Entry(1, 3, 0));
        assertThrows(IllegalArgumentException.class, () -> new DroplineFrame.Control(1, -1));
        DroplineFrame.State tooLong =
                new DroplineFrame.State(0, java.util.Collections.nCopies(10, new DroplineFrame.Entry(1, 4, 0)));
        assertThrows(IllegalArgumentException.class, () -> DroplineFrames.encode(tooLong));
    }

    static DroplineFrame decode(Bytes wire) {
        List<DroplineFrame> found = frames(feed(new FrameDecoder(), wire));
        assertEquals(1, found.size());
        return found.get(0);
    }

    private static void assertReason(Reason reason, int... payload) {
        byte[] checked = new byte[payload.length + 2];
        for (int i = 0; i < payload.length; i++) {
            checked[i] = (byte) payload[i];
        }
        int check = (int) new Crc(CrcCatalogue.CRC_16_IBM_3740).of(Bytes.of(payload));
        checked[payload.length] = (byte) (check >> 8);
        checked[payload.length + 1] = (byte) check;
        byte[] wire = new byte[checked.length + 2];
        int length = Cobs.encode(checked, 0, checked.length, wire, 0) + 1;

        assertEquals(
                List.of(new Decoded.Rejected<DroplineFrame>(reason, length)),
                feed(new FrameDecoder(), Bytes.copyOf(wire, 0, length)));
    }

    /** Every result that is not a request for more. */
    private static List<Decoded<DroplineFrame>> feed(FrameDecoder decoder, Bytes wire) {
        List<Decoded<DroplineFrame>> results = new ArrayList<>();
        for (int i = 0; i < wire.length(); i++) {
            Decoded<DroplineFrame> result = decoder.onByte(wire.at(i));
            if (!(result instanceof Decoded.NeedMore)) {
                results.add(result);
            }
        }
        return results;
    }

    private static List<DroplineFrame> frames(List<Decoded<DroplineFrame>> results) {
        return results.stream().map(FrameDecoderTest::complete).toList();
    }

    private static DroplineFrame complete(Decoded<DroplineFrame> result) {
        assertTrue(result instanceof Decoded.Complete, result::toString);
        return ((Decoded.Complete<DroplineFrame>) result).frame();
    }

    private static int bytes(Decoded<DroplineFrame> result) {
        if (result instanceof Decoded.Rejected<DroplineFrame> rejected) {
            return rejected.bytesDropped();
        }
        return result instanceof Decoded.Complete<DroplineFrame> complete ? complete.bytesUsed() : 0;
    }

    private static DroplineFrame randomFrame(Random random) {
        List<DroplineFrame.Entry> entries = new ArrayList<>();
        for (int i = random.nextInt(10); i > 0; i--) {
            int valueBytes = 1 << random.nextInt(3);
            long packed = random.nextBoolean() ? 0 : random.nextLong() >>> (64 - 8 * valueBytes);
            entries.add(new DroplineFrame.Entry(random.nextInt(16_384), valueBytes, packed));
        }
        boolean wide = random.nextBoolean();
        List<DroplineFrame.Control> controls = new ArrayList<>();
        for (int i = random.nextInt(13); i > 0; i--) {
            controls.add(new DroplineFrame.Control(random.nextInt(wide ? 65_536 : 256), random.nextInt(65_536)));
        }
        int address = 1 + random.nextInt(255);
        int sequence = random.nextInt(256);
        return switch (random.nextInt(3)) {
            case 0 -> new DroplineFrame.Poll(address, sequence, entries);
            case 1 -> new DroplineFrame.State(sequence, entries);
            default -> new DroplineFrame.Reply(address, new NodeStatus(sequence, 0, 255, 65_535, 1), wide, controls);
        };
    }

    @Test
    void garbageIsTakenAsItComes() {
        FrameDecoder decoder = new FrameDecoder();

        Garbage.feed(decoder::onByte, decoder::onSilence, Decoded.NeedMore::new, 0, 1);
    }
}
