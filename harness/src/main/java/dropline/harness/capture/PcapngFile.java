package dropline.harness.capture;

import dropline.bus.pit.Pit;
import dropline.bus.trace.TraceSink;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * The frames of a stretch as a pcapng file, one a packet, at the instant of its first start bit; an interface for each
 * segment. The link type is RTAC serial (250), whose header tells the direction, so that packet analysers decode Modbus
 * RTU from it. Time counts from the start of the run.
 */
public final class PcapngFile implements CaptureSink {
    private static final int RTAC_SERIAL = 250;
    private static final int TX_START = 1;
    private static final int RX_START = 2;
    private static final int HEADER = 12;
    private static final long SECOND = 1_000_000_000L;

    private final OutputStream out;
    private final PcapngBlocks blocks;
    private final List<Talkers> talkers = new ArrayList<>();
    private final PriorityQueue<SentFrame> waiting =
            new PriorityQueue<>(Comparator.comparingLong(SentFrame::startNanos).thenComparingInt(SentFrame::segment));
    private long written;

    private PcapngFile(OutputStream out) {
        this.out = out;
        blocks = new PcapngBlocks(out);
    }

    /** Creates the file and writes what stands above the packets. */
    public static PcapngFile create(Path file, Pit pit, String run) throws IOException {
        OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16);
        PcapngFile made = new PcapngFile(out);
        try {
            made.blocks.section("Dropline", pit.name() + ", " + run + ". Times are since the start of the run.");
            for (int segment = 0; segment < pit.segments().size(); segment++) {
                made.talkers.add(new Talkers(pit, segment));
                made.blocks.interfaceOf(RTAC_SERIAL, pit.segments().get(segment).name());
            }
        } catch (IOException failed) {
            out.close();
            throw failed;
        }
        return made;
    }

    /** Packets written so far. */
    public long written() {
        return written;
    }

    @Override
    public void take(int segment, List<SentFrame> frames, List<DriverChange> drivers) {
        waiting.addAll(frames);
    }

    @Override
    public void reached(long horizonNanos) throws IOException {
        while (!waiting.isEmpty() && waiting.element().startNanos() < horizonNanos) {
            SentFrame frame = waiting.remove();
            boolean fromController = frame.talker() == TraceSink.CONTROLLER;
            String comment = FrameWords.of(frame, talkers.get(frame.segment()));
            blocks.packet(frame.segment(), frame.startNanos(), packet(frame), fromController, comment);
            written++;
        }
    }

    @Override
    public void close() throws IOException {
        try (out) {
            out.flush();
        }
    }

    /** The link type's header (its times are whole microseconds), then the frame. */
    private static byte[] packet(SentFrame frame) {
        ByteBuffer packet = ByteBuffer.allocate(HEADER + frame.bytes().length());
        packet.putInt((int) (frame.startNanos() / SECOND));
        packet.putInt((int) (frame.startNanos() % SECOND / 1000));
        packet.put((byte) (frame.talker() == TraceSink.CONTROLLER ? TX_START : RX_START));
        packet.put((byte) 0);
        packet.putShort((short) 0);
        packet.put(frame.bytes().toArray());
        return packet.array();
    }
}
