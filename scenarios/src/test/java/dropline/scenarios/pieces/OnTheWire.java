package dropline.scenarios.pieces;

import dropline.protocol.Bytes;
import dropline.protocol.Decoded;
import dropline.protocol.cobs.Cobs;
import dropline.protocol.crc.Crc;
import dropline.protocol.crc.CrcCatalogue;
import dropline.protocol.frames.DroplineFrame;
import dropline.protocol.frames.DroplineFrames;
import dropline.protocol.frames.FrameDecoder;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** What is said on the wire: checks, stuffing, decoding. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class OnTheWire {
    private static final int LENGTH = 64;

    private final byte[] plain = new byte[LENGTH];
    private final byte[] stuffed = new byte[Cobs.maxEncodedLength(LENGTH)];
    private final byte[] unstuffed = new byte[LENGTH + 1];
    private final Crc crc = new Crc(CrcCatalogue.CRC_16_IBM_3740);
    private final Bytes poll = DroplineFrames.encode(new DroplineFrame.Poll(7, 1, List.of()));
    private final FrameDecoder decoder = new FrameDecoder();
    private final int stuffedLength;

    public OnTheWire() {
        for (int i = 0; i < LENGTH; i++) {
            plain[i] = (byte) (i % 9 == 0 ? 0 : 7 * i);
        }
        stuffedLength = Cobs.encode(plain, 0, LENGTH, stuffed, 0);
    }

    @Benchmark
    public long crcOf64Bytes() {
        return crc.of(plain, 0, LENGTH);
    }

    @Benchmark
    public int cobsOf64Bytes() {
        return Cobs.encode(plain, 0, LENGTH, stuffed, 0);
    }

    @Benchmark
    public int cobsOf64BytesUndone() {
        return Cobs.decode(stuffed, 0, stuffedLength, unstuffed);
    }

    @Benchmark
    public int pollDecoded() {
        int frames = 0;
        for (int i = 0; i < poll.length(); i++) {
            frames += decoder.onByte(poll.at(i)) instanceof Decoded.Complete<DroplineFrame> ? 1 : 0;
        }
        return frames;
    }
}
