package dropline.protocol.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Decoded;
import dropline.protocol.Decoded.Reason;
import dropline.protocol.Garbage;
import dropline.protocol.modbus.ModbusDecoder.Role;
import dropline.protocol.modbus.ModbusFrame.Request;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** MODBUS over serial line V1.02, sections 2.4.2 and 2.5.1.1. */
final class ModbusDecoderTest {
    private static final Request READ = new Request(1, new ModbusRequest.ReadRegisters(3, 0x6B, 3));
    private static final Bytes READ_BYTES = READ.encode();

    @Test
    void aSilenceOfThreeAndAHalfCharactersEndsAFrameAndATenthOfABitLessDoesNot() {
        ModbusDecoder decoder = Heard.synchronised(Role.REQUESTS);
        for (int i = 0; i < READ_BYTES.length(); i++) {
            decoder.onByte(READ_BYTES.at(i));
        }

        assertInstanceOf(Decoded.NeedMore.class, decoder.onSilence(Heard.FRAME_GAP - 1));
        assertEquals(Heard.complete(READ, READ_BYTES), decoder.onSilence(Heard.FRAME_GAP));
        assertInstanceOf(Decoded.NeedMore.class, decoder.onSilence(Heard.FRAME_GAP + 1));
    }

    @Test
    void aSilenceOfOneAndAHalfCharactersInsideAFrameIsAllowed() {
        for (int split = 1; split < READ_BYTES.length(); split++) {
            assertEquals(Heard.complete(READ, READ_BYTES), withSilenceAt(split, Heard.CHARACTER_GAP));
        }
    }

    @Test
    void aLongerSilenceInsideAFrameSpoilsIt() {
        for (int split = 1; split < READ_BYTES.length(); split++) {
            assertEquals(
                    Heard.rejected(Reason.GAP_INSIDE, READ_BYTES.length()),
                    withSilenceAt(split, Heard.CHARACTER_GAP + 1));
            assertEquals(
                    Heard.rejected(Reason.GAP_INSIDE, READ_BYTES.length()), withSilenceAt(split, Heard.FRAME_GAP - 1));
        }
    }

    @Test
    void afterASpoiltFrameTheNextIsFound() {
        ModbusDecoder decoder = Heard.synchronised(Role.REQUESTS);
        decoder.onByte(1);
        decoder.onSilence(Heard.CHARACTER_GAP + 1);
        decoder.onByte(3);
        decoder.onSilence(Heard.FRAME_GAP);

        assertEquals(Heard.complete(READ, READ_BYTES), Heard.feed(decoder, READ_BYTES));
    }

    /** Figure 14: from the initial state, a silence of t3.5 has to be heard first. */
    @Test
    void aFrameJoinedInTheMiddleIsDropped() {
        ModbusDecoder decoder = new ModbusDecoder(Role.REQUESTS, 19_200, CharacterFormat.EIGHT_E_ONE);

        assertEquals(Heard.rejected(Reason.NOT_SYNCHRONISED, 8), Heard.feed(decoder, READ_BYTES));
        assertEquals(Heard.complete(READ, READ_BYTES), Heard.feed(decoder, READ_BYTES));
    }

    @Test
    void the257thByteSpoilsAFrame() {
        byte[] longest = new byte[256];
        longest[0] = 1;
        longest[1] = 99;
        int check = Adu.check(longest, 254);
        longest[254] = (byte) check;
        longest[255] = (byte) (check >> 8);
        ModbusDecoder decoder = Heard.synchronised(Role.REQUESTS);

        assertEquals(
                new Decoded.Complete<ModbusFrame>(new ModbusFrame.Unacceptable(1, 99, 1), 256),
                Heard.feed(decoder, Bytes.copyOf(longest, 0, 256)));
        for (int i = 0; i < 257; i++) {
            decoder.onByte(0);
        }
        assertEquals(Heard.rejected(Reason.TOO_LONG, 257), decoder.onSilence(Heard.FRAME_GAP));
    }

    @Test
    void everySingleBitFlipAndEveryTruncationIsRejected() {
        List<Bytes> frames = List.of(
                READ_BYTES,
                Heard.framed(1, "17 00 03 00 06 00 0E 00 03 06 00 FF 00 FF 00 FF"),
                Heard.framed(1, "03 06 02 2B 00 00 00 64"));
        for (Bytes frame : frames) {
            for (int bit = 0; bit < 8 * frame.length(); bit++) {
                byte[] flipped = frame.toArray();
                flipped[bit / 8] ^= (byte) (1 << bit % 8);
                Bytes damaged = Bytes.copyOf(flipped, 0, flipped.length);

                assertEquals(Heard.rejected(Reason.BAD_CHECK, frame.length()), Heard.request(damaged));
                assertEquals(Heard.rejected(Reason.BAD_CHECK, frame.length()), Heard.response(damaged));
            }
            for (int kept = 1; kept < frame.length(); kept++) {
                assertInstanceOf(
                        Decoded.Rejected.class, Heard.request(Bytes.copyOf(frame.toArray(), 0, kept)), "kept " + kept);
            }
        }
    }

    /** Section 2.2: 0 is for all nodes and never answers, 248 to 255 are reserved. */
    @Test
    void addressesOutOfRangeAreRejected() {
        assertEquals(Heard.rejected(Reason.BAD_ADDRESS, 8), Heard.request(Heard.framed(248, "06 00 01 00 03")));
        assertEquals(Heard.rejected(Reason.BAD_ADDRESS, 8), Heard.response(Heard.framed(255, "06 00 01 00 03")));
        assertEquals(Heard.rejected(Reason.BAD_ADDRESS, 8), Heard.response(Heard.framed(0, "06 00 01 00 03")));
        assertInstanceOf(Decoded.Complete.class, Heard.request(Heard.framed(247, "06 00 01 00 03")));
    }

    /** Section 2.1: broadcasts only write. */
    @Test
    void broadcastsThatReadAreRejected() {
        Request write = new Request(0, new ModbusRequest.WriteRegister(1, 3));

        assertEquals(Heard.complete(write, write.encode()), Heard.request(Heard.framed(0, "06 00 01 00 03")));
        assertEquals(Heard.rejected(Reason.BAD_ADDRESS, 8), Heard.request(Heard.framed(0, "03 00 6B 00 03")));
        assertEquals(
                Heard.rejected(Reason.BAD_ADDRESS, 15),
                Heard.request(Heard.framed(0, "17 00 03 00 06 00 0E 00 01 02 00 FF")));
        assertEquals(Heard.rejected(Reason.BAD_VALUE, 8), Heard.request(Heard.framed(0, "05 00 AC FF 01")));
        assertThrows(IllegalArgumentException.class, () -> new Request(0, new ModbusRequest.ReadRegisters(3, 0, 1)));
    }

    /** MODBUS application protocol V1.1b3, section 6.5: 85 03. */
    @Test
    void coilValuesOtherThanOnAndOffAreAnsweredByException3() {
        for (String value : List.of("00 01", "00 FF", "FF 01", "FF FF")) {
            Decoded<ModbusFrame> heard = Heard.request(Heard.framed(1, "05 00 AC " + value));

            assertEquals(new ModbusFrame.Unacceptable(1, 5, 3), frame(heard));
            assertEquals(
                    Heard.framed(1, "85 03"),
                    new ModbusFrame.Unacceptable(1, 5, 3).answer().encode());
            assertEquals(Heard.rejected(Reason.BAD_VALUE, 8), Heard.response(Heard.framed(1, "05 00 AC " + value)));
        }
    }

    /** MODBUS application protocol V1.1b3, sections 6.1 to 6.17. */
    @Test
    void quantitiesBeyondTheLimitsAreAnsweredByException3() {
        assertLimit("01 00 00", 2000, "");
        assertLimit("02 00 00", 2000, "");
        assertLimit("03 00 00", 125, "");
        assertLimit("04 00 00", 125, "");
        assertLimit("17 00 00", 125, " 00 00 00 01 02 00 00");
        assertException(3, "0F 00 00 00 00 00");
        assertException(3, "10 00 00 00 00 00");
        assertException(3, "10 00 00 00 7C F8" + " 00".repeat(248 - 2));
        assertException(3, "17 00 00 00 01 00 00 00 00 00");
        assertException(3, "17 00 00 00 01 00 00 00 7A F4" + " 00".repeat(244 - 2));
        assertEquals(
                new ModbusRequest.WriteRegisters(0, Collections.nCopies(123, 0)),
                frameOf("10 00 00 00 7B F6" + " 00".repeat(246)).request());
        assertEquals(
                new ModbusRequest.ExchangeRegisters(0, 125, 0, Collections.nCopies(121, 0)),
                frameOf("17 00 00 00 7D 00 00 00 79 F2" + " 00".repeat(242)).request());
        assertEquals(
                new ModbusRequest.WriteBits(0, 1968, Bytes.of(new int[246])),
                frameOf("0F 00 00 07 B0 F6" + " 00".repeat(246)).request());
    }

    @Test
    void lengthsThatDoNotFitAreAnsweredByException3() {
        assertException(3, "03 00 00 00");
        assertException(3, "03 00 00 00 01 00");
        assertException(3, "06 00 00");
        assertException(3, "10 00 00 00 02 02 00 00");
        assertException(3, "10 00 00 00 01 02 00");
        assertException(3, "10 00");
        assertException(3, "17 00 00 00 01 00 00 00 01 04 00 00");
    }

    @Test
    void rangesBeyondTheLastAddressAreAnsweredByException2() {
        assertException(2, "03 FF FF 00 02");
        assertException(2, "10 FF FF 00 02 04 00 00 00 00");
        assertException(2, "17 00 00 00 01 FF FF 00 02 04 00 00 00 00");
        assertEquals(
                new ModbusRequest.ReadRegisters(3, 0xFFFF, 1),
                frameOf("03 FF FF 00 01").request());
    }

    @Test
    void unknownFunctionsAreAnsweredByException1AndReservedOnesRejected() {
        assertException(1, "08 00 00 A5 37");
        assertException(1, "7F");
        assertEquals(Heard.rejected(Reason.BAD_KIND, 5), Heard.request(Heard.framed(1, "83 02")));
        assertEquals(Heard.rejected(Reason.BAD_KIND, 5), Heard.request(Heard.framed(1, "00 02")));
        assertEquals(Heard.rejected(Reason.BAD_KIND, 5), Heard.response(Heard.framed(1, "08 02")));
    }

    @Test
    void responsesThatContradictThemselvesAreRejected() {
        assertResponse(Reason.BAD_LENGTH, "03 04 00 00");
        assertResponse(Reason.BAD_VALUE, "03 03 00 00 00");
        assertResponse(Reason.BAD_VALUE, "03 00");
        assertResponse(Reason.BAD_VALUE, "01 FB" + " 00".repeat(251));
        assertResponse(Reason.BAD_LENGTH, "06 00 01 00");
        assertResponse(Reason.BAD_VALUE, "10 00 00 00 7C");
        assertResponse(Reason.BAD_VALUE, "0F FF FF 00 02");
        assertResponse(Reason.BAD_LENGTH, "83 02 00");
        assertResponse(Reason.BAD_VALUE, "83 00");
    }

    @Test
    void aRequestHeardAsAResponseIsNotTakenForOne() {
        assertEquals(Heard.rejected(Reason.BAD_LENGTH, 8), Heard.response(READ_BYTES));
    }

    @Test
    void anyStreamOfBytesAndSilencesIsSurvivedAndAccountedFor() {
        long seed = 256;
        Random random = new Random(seed);
        for (Role role : Role.values()) {
            ModbusDecoder decoder = new ModbusDecoder(role, 115_200, CharacterFormat.EIGHT_N_ONE);
            int total = 300_000;
            long accounted = 0;
            for (int i = 0; i < total; i++) {
                decoder.onByte(random.nextInt(256));
                if (random.nextInt(60) == 0) {
                    accounted += bytes(decoder.onSilence(random.nextInt(4000)));
                }
            }
            accounted += bytes(decoder.onSilence(1_000_000));
            assertEquals(total, accounted, "seed " + seed + " " + role);
        }
        assertThrows(
                IllegalArgumentException.class,
                () -> Heard.synchronised(Role.REQUESTS).onSilence(-1));
    }

    /** Random contents under a right check reach every branch of the readers. */
    @Test
    void anyContentsUnderARightCheckAreReadOrRejected() {
        long seed = 257;
        Random random = new Random(seed);
        int[] functions = {1, 2, 3, 4, 5, 6, 15, 16, 23, 0x83, 0};
        for (int round = 0; round < 100_000; round++) {
            byte[] pdu = new byte[1 + random.nextInt(24)];
            for (int i = 0; i < pdu.length; i++) {
                pdu[i] = (byte) (random.nextInt(3) == 0 ? random.nextInt(256) : random.nextInt(4));
            }
            pdu[0] = (byte) functions[random.nextInt(functions.length)];
            Bytes frame = Adu.wrap(random.nextInt(3), Bytes.copyOf(pdu, 0, pdu.length));

            String note = "seed " + seed + " round " + round;
            assertSame(frame, Heard.request(frame), note);
            assertSame(frame, Heard.response(frame), note);
        }
    }

    private static void assertSame(Bytes bytes, Decoded<ModbusFrame> heard, String note) {
        assertEquals(bytes.length(), bytes(heard), note);
        if (heard instanceof Decoded.Complete<ModbusFrame> complete) {
            if (complete.frame() instanceof Request request) {
                assertEquals(bytes, request.encode(), note);
            } else if (complete.frame() instanceof ModbusFrame.Response response) {
                assertEquals(bytes, response.encode(), note);
            }
        }
    }

    private static Decoded<ModbusFrame> withSilenceAt(int split, int tenthsOfBit) {
        ModbusDecoder decoder = Heard.synchronised(Role.REQUESTS);
        for (int i = 0; i < READ_BYTES.length(); i++) {
            if (i == split) {
                decoder.onSilence(tenthsOfBit);
            }
            decoder.onByte(READ_BYTES.at(i));
        }
        return decoder.onSilence(Heard.FRAME_GAP);
    }

    private static void assertLimit(String beforeQuantity, int most, String after) {
        String format = beforeQuantity + " %02X %02X" + after;
        int more = most + 1;
        assertInstanceOf(Request.class, frame(Heard.request(Heard.framed(1, words(format, 1)))));
        assertInstanceOf(Request.class, frame(Heard.request(Heard.framed(1, words(format, most)))));
        assertException(3, words(format, 0));
        assertException(3, words(format, more));
    }

    private static String words(String format, int quantity) {
        return String.format(java.util.Locale.ROOT, format, quantity >> 8, quantity & 0xFF);
    }

    private static void assertException(int code, String pdu) {
        int function = Integer.parseInt(pdu.substring(0, 2), 16);
        assertEquals(new ModbusFrame.Unacceptable(1, function, code), frame(Heard.request(Heard.framed(1, pdu))), pdu);
    }

    private static void assertResponse(Reason reason, String pdu) {
        Bytes frame = Heard.framed(1, pdu);
        assertEquals(Heard.rejected(reason, frame.length()), Heard.response(frame), pdu);
    }

    private static Request frameOf(String pdu) {
        return (Request) frame(Heard.request(Heard.framed(1, pdu)));
    }

    private static ModbusFrame frame(Decoded<ModbusFrame> heard) {
        assertInstanceOf(Decoded.Complete.class, heard);
        return ((Decoded.Complete<ModbusFrame>) heard).frame();
    }

    private static int bytes(Decoded<ModbusFrame> result) {
        if (result instanceof Decoded.Rejected<ModbusFrame> rejected) {
            return rejected.bytesDropped();
        }
        return result instanceof Decoded.Complete<ModbusFrame> complete ? complete.bytesUsed() : 0;
    }

    @Test
    void garbageIsTakenAsItComes() {
        for (ModbusDecoder.Role role : ModbusDecoder.Role.values()) {
            ModbusDecoder decoder = new ModbusDecoder(role, 19_200, CharacterFormat.EIGHT_N_ONE);

            Garbage.feed(decoder::onByte, decoder::onSilence, Decoded.NeedMore::new, 1, 3, 16);
        }
    }
}
