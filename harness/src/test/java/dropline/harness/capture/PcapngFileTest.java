package dropline.harness.capture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dropline.bus.trace.TraceSink;
import dropline.protocol.Bytes;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The file's form: block types and the magic number as systemd's pcapng.h and Wireshark's wiretap/pcapng.h give them;
 * length rules after Wireshark's "length not a multiple of 4", "trailer differs"; the packet's header after its
 * packet-rtacser.c.
 */
final class PcapngFileTest {
    private static final long BIT = PlayedBus.BIT;
    private static final int CONTROLLER = TraceSink.CONTROLLER;
    private static final long START = 7_000_000_001L;

    @TempDir
    private Path folder;

    /** A block: its type, and its body between the two lengths. */
    private record Block(int type, ByteBuffer body) {}

    @Test
    void everyBlockIsAMultipleOf4LongAndRepeatsItsLengthAtItsEnd() throws IOException {
        for (int length = 1; length <= 8; length++) {
            assertEquals(
                    List.of(0x0A0D0D0A, 1, 6),
                    blocks(oneFrame(length)).stream().map(Block::type).toList());
        }
    }

    @Test
    void theSectionSaysItsByteOrderAndVersion() throws IOException {
        ByteBuffer section = blocks(oneFrame(3)).get(0).body();

        assertEquals(0x1A2B3C4D, section.getInt(0));
        assertEquals(1, section.getShort(4));
        assertEquals(0, section.getShort(6));
        assertEquals(-1, section.getLong(8));
    }

    @Test
    void theInterfaceIsRtacSerialAndCountsNanoseconds() throws IOException {
        ByteBuffer body = blocks(oneFrame(3)).get(1).body();

        assertEquals(250, body.getShort(0));
        Map<Integer, byte[]> options = options(body, 8);
        assertArrayEquals("bus".getBytes(StandardCharsets.UTF_8), options.get(2));
        assertArrayEquals(new byte[] {9}, options.get(9));
    }

    /** (9, 7000000001) is 7.000000001 s: the published oracle of the option that says what time counts in. */
    @Test
    void aPacketsTimeIsItsFirstStartBitInNanoseconds() throws IOException {
        ByteBuffer body = blocks(oneFrame(3)).get(2).body();

        assertEquals(0, body.getInt(0));
        assertEquals(START, ((long) body.getInt(4) << 32) | (body.getInt(8) & 0xFFFFFFFFL));
        assertEquals(15, body.getInt(12));
        assertEquals(15, body.getInt(16));
    }

    @Test
    void aPacketBeginsWithTheTwelveBytesThatTellTheDirection() throws IOException {
        List<Block> blocks = blocks(requestAndReply());

        assertEquals("00 00 00 07 00 00 00 00 01 00 00 00 01 02", data(blocks.get(2)));
        assertEquals("00 00 00 07 00 00 0F A0 02 00 00 00 03", data(blocks.get(3)));
        assertArrayEquals(new byte[] {2, 0, 0, 0}, options(blocks.get(2)).get(2));
        assertArrayEquals(new byte[] {1, 0, 0, 0}, options(blocks.get(3)).get(2));
    }

    @Test
    void commentsTellTheEndAndWhatBecameOfTheFrame() throws IOException {
        List<Block> blocks = blocks(requestAndReply());

        assertEquals("request to node 1, ends at 7.002000001 s, answered", comment(blocks.get(2)));
        assertEquals("reply of node 1, ends at 7.005000001 s, answered", comment(blocks.get(3)));
    }

    @Test
    void aLateReplyIsNotTheOneThatAnswered() throws IOException {
        long at = 100 * BIT;
        PlayedBus bus = new PlayedBus(1)
                .frame(CONTROLLER, TraceSink.REQUEST, 0, 1, 0, 0, 10 * BIT, Bytes.of(1))
                .at(20 * BIT, sink -> sink.timedOut(20 * BIT, 0, 1, 1))
                .frame(0, TraceSink.REPLY, 0, 1, 25 * BIT, 25 * BIT, 35 * BIT, Bytes.of(2))
                .frame(CONTROLLER, TraceSink.REQUEST, 0, 1, at, at, at + 10 * BIT, Bytes.of(1))
                .frame(0, TraceSink.REPLY, 0, 1, at + 15 * BIT, at + 15 * BIT, at + 25 * BIT, Bytes.of(2))
                .at(at + 25 * BIT, sink -> sink.answered(at + 25 * BIT, 0, 1, 2, 5 * BIT));

        List<Block> blocks = blocks(bus);

        assertTrue(comment(blocks.get(2)).endsWith(", timed out"));
        assertTrue(comment(blocks.get(3)).endsWith(", not taken: timed out"));
        assertTrue(comment(blocks.get(4)).endsWith(", answered"));
        assertTrue(comment(blocks.get(5)).endsWith(", answered"));
    }

    @Test
    void aClashNamesWhoElseWasOnThePairAndAStuckDriverIsNotWaitedForInVain() throws IOException {
        PlayedBus bus = new PlayedBus(2);
        bus.at(0, sink -> sink.driverOn(0, 1));
        for (int i = 0; i < 30; i++) {
            long at = i * 20L * BIT;
            int transaction = i + 1;
            bus.at(at, sink -> sink.clash(at, CONTROLLER, 1));
            bus.frame(CONTROLLER, TraceSink.REQUEST, 0, transaction, at, at, at + 10 * BIT, Bytes.of(1));
            bus.at(at + 19 * BIT, sink -> sink.timedOut(at + 19 * BIT, 0, transaction, 1));
        }

        List<Block> blocks = blocks(bus);

        assertEquals(32, blocks.size());
        assertEquals("request to node 1, ends at 0.001000000 s, clash with node 2, timed out", comment(blocks.get(2)));
    }

    private PlayedBus oneFrame(int length) {
        return new PlayedBus(1)
                .frame(CONTROLLER, TraceSink.REQUEST, 0, 1, START, START, START + 200 * BIT, Bytes.of(new int[length]));
    }

    private static PlayedBus requestAndReply() {
        long reply = START + 40 * BIT;
        return new PlayedBus(1)
                .frame(CONTROLLER, TraceSink.REQUEST, 0, 1, START, START, START + 20 * BIT, Bytes.of(1, 2))
                .frame(0, TraceSink.REPLY, 0, 1, reply, reply, reply + 10 * BIT, Bytes.of(3))
                .at(reply + 10 * BIT, sink -> sink.answered(reply + 10 * BIT, 0, 1, 1, 20 * BIT));
    }

    private List<Block> blocks(PlayedBus bus) throws IOException {
        Path file = folder.resolve("t.pcapng");
        bus.play(new Stretch(0, 2 * START), 3 * START, PcapngFile.create(file, bus.pit(), "seed 1"));
        ByteBuffer all = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
        List<Block> blocks = new ArrayList<>();
        for (int at = 0; at < all.limit(); ) {
            int length = all.getInt(at + 4);
            assertTrue(length >= 12 && length % 4 == 0, () -> "length=" + length);
            assertEquals(length, all.getInt(at + length - 4));
            blocks.add(new Block(all.getInt(at), all.slice(at + 8, length - 12).order(ByteOrder.LITTLE_ENDIAN)));
            at += length;
        }
        return blocks;
    }

    private static String data(Block packet) {
        byte[] data = new byte[packet.body().getInt(12)];
        packet.body().get(20, data);
        return Bytes.copyOf(data, 0, data.length).toString();
    }

    private static String comment(Block packet) {
        return new String(options(packet).get(1), StandardCharsets.UTF_8);
    }

    private static Map<Integer, byte[]> options(Block packet) {
        int length = packet.body().getInt(12);
        return options(packet.body(), 20 + (length + 3) / 4 * 4);
    }

    private static Map<Integer, byte[]> options(ByteBuffer body, int from) {
        Map<Integer, byte[]> options = new TreeMap<>();
        int at = from;
        while (body.getShort(at) != 0) {
            byte[] value = new byte[body.getShort(at + 2)];
            body.get(at + 4, value);
            options.put((int) body.getShort(at), Arrays.copyOf(value, value.length));
            at += 4 + (value.length + 3) / 4 * 4;
        }
        assertEquals(body.limit(), at + 4);
        return options;
    }
}
