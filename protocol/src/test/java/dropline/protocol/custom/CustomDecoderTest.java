package dropline.protocol.custom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Garbage;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

final class CustomDecoderTest {
    private static final long SEED = 20_261_125L;
    private static final int ROUNDS = 150;

    @Test
    void whatIsWrittenIsReadBack() {
        Random random = new Random(SEED);
        for (Layout layout : Examples.ALL) {
            Custom custom = Examples.custom(layout);
            for (int round = 0; round < ROUNDS; round++) {
                CustomFrame frame = Stream.random(layout, random);

                Stream stream = new Stream(layout, frame.kind()).hear(custom.encode(frame));

                assertEquals(List.of(frame), stream.frames(), note(layout, round));
            }
        }
    }

    @Test
    void framesInARowAreAllFoundAndEveryCharacterIsAccountedFor() {
        Random random = new Random(SEED + 1);
        for (Layout layout : Examples.ALL) {
            List<CustomFrame> sent = new ArrayList<>();
            Stream stream = new Stream(layout);
            long characters = 0;
            for (int round = 0; round < ROUNDS; round++) {
                CustomFrame frame = Stream.random(layout, random);
                Bytes bytes = Examples.custom(layout).encode(frame);
                sent.add(frame);
                stream.hear(bytes);
                characters += bytes.length();
            }

            assertEquals(sent, stream.frames(), layout.name());
            assertEquals(characters, stream.accounted(), layout.name());
        }
    }

    @Test
    void everySingleFlippedBitIsRejectedOrMakesNoDifference() {
        Random random = new Random(SEED + 2);
        for (Layout layout : Examples.ALL) {
            for (int round = 0; round < 10; round++) {
                CustomFrame frame = Stream.random(layout, random);
                Bytes bytes = Examples.custom(layout).encode(frame);
                for (int bit = 0; bit < 8 * bytes.length(); bit++) {
                    byte[] damaged = bytes.toArray();
                    damaged[bit / 8] ^= (byte) (1 << bit % 8);

                    Stream stream = new Stream(layout).hear(Bytes.copyOf(damaged, 0, damaged.length));

                    String note = note(layout, round) + " bit " + bit;
                    assertTrue(stream.frames().stream().allMatch(frame::equals), () -> note + " " + stream.frames());
                }
            }
        }
    }

    @Test
    void anyBytesAreTakenAndAccountedForInTheEnd() {
        Random random = new Random(SEED + 3);
        for (Layout layout : Examples.ALL) {
            byte[] noise = new byte[20_000];
            for (int i = 0; i < noise.length; i++) {
                // every layout's own beginnings and ends far more often than chance would have them
                int[] likely = {'\n', '$', 0x7E, 0x7C, 0x7D, 0xA5, 0x5A, 0x31, '0', ',', '=', '?'};
                noise[i] =
                        (byte) (random.nextInt(3) == 0 ? random.nextInt(256) : likely[random.nextInt(likely.length)]);
            }

            Stream stream = new Stream(layout)
                    .hear(Bytes.copyOf(noise, 0, noise.length))
                    .hear(end(layout));

            long idle = layout.equals(Examples.ONE_FLAG) || layout.equals(Examples.LINES) ? noise.length : 1;
            long left = noise.length - stream.accounted();
            assertTrue(left >= -1 && left <= idle + layout.longest(), () -> layout.name() + " left=" + left);
        }
    }

    /** Garbage holds no start, end or gap of its own at its end, so one of those, or a longest frame, sets it right. */
    @Test
    void framesAreFoundAgainAfterAnyGarbage() {
        Random random = new Random(SEED + 4);
        for (Layout layout : Examples.ALL) {
            for (int round = 0; round < ROUNDS; round++) {
                byte[] garbage = new byte[1 + random.nextInt(40)];
                random.nextBytes(garbage);
                Stream stream = new Stream(layout)
                        .hear(Bytes.copyOf(garbage, 0, garbage.length))
                        .hear(end(layout));
                List<CustomFrame> sent = new ArrayList<>();
                int characters = 0;
                while (characters < 2 * layout.longest()) {
                    CustomFrame frame = Stream.random(layout, random);
                    Bytes bytes = Examples.custom(layout).encode(frame);
                    sent.add(frame);
                    stream.hear(bytes);
                    characters += bytes.length();
                }

                List<CustomFrame> found = stream.frames();
                List<CustomFrame> last = found.subList(Math.max(0, found.size() - sent.size()), found.size());
                assertEquals(sent, last, note(layout, round));
            }
        }
    }

    @Test
    void aFrameInsideAFalseBeginningIsFoundOnceThatHasItsBytes() {
        Custom custom = Examples.custom(Examples.COUNTED);
        CustomFrame poll = new CustomFrame(FrameLayout.Kind.REQUEST, 7, 1, List.of());
        // a beginning that asks for 5 items of 6 bytes, followed by four polls of 8 bytes
        Stream stream = new Stream(Examples.COUNTED).hear(Bytes.ofHex("A5 5A 31 07 00 05"));
        for (int i = 0; i < 4; i++) {
            stream.hear(custom.encode(poll));
        }

        assertEquals(List.of(poll, poll, poll, poll), stream.frames());
    }

    @Test
    void aNumberOfFreeWidthIsReadAsFarAsItsDigitsGo() {
        int check = 0;
        for (char c : "!000,S00012=-42".toCharArray()) {
            check ^= c;
        }
        String line = "$!000,S00012=-42*" + String.format(java.util.Locale.ROOT, "%02x", check) + "\n";

        Stream stream = new Stream(Examples.FREE).hear(Examples.text(line).bytes());

        assertEquals(-42, stream.frames().get(0).items().get(0).value());
        assertEquals(12, stream.frames().get(0).items().get(0).number());
    }

    private static Bytes end(Layout layout) {
        return layout.boundary() instanceof Boundary.Delimiters delimiters ? Bytes.of(delimiters.end()) : Bytes.of();
    }

    private static String note(Layout layout, int round) {
        return layout.name() + " seed " + SEED + " round " + round;
    }

    @Test
    void garbageIsTakenAsItComes() {
        for (Layout layout : Examples.ALL) {
            CustomDecoder decoder =
                    Examples.custom(layout).decoder(115_200, CharacterFormat.EIGHT_N_ONE, FrameLayout.Kind.values());

            Garbage.feed(decoder::onByte, decoder::onSilence, decoder::more, 0x7E, 0x0A, 0xC3, 0x3C, 2, '?', '=');
        }
    }
}
