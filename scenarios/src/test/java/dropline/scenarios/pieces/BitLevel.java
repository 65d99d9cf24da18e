package dropline.scenarios.pieces;

import dropline.bus.clock.UartClock;
import dropline.bus.pit.Transceiver;
import dropline.bus.trace.EventOrder;
import dropline.bus.trace.TraceSink;
import dropline.bus.wire.Frame;
import dropline.bus.wire.Noise;
import dropline.bus.wire.Reception;
import dropline.bus.wire.Uart;
import dropline.bus.wire.Wire;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.frames.DroplineFrames;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** A frame of eight characters that is decided bit by bit. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class BitLevel {
    private static final int BAUD = 115_200;
    private static final long EVERY_NANOS = 2_000_000;
    private static final Bytes SAID = Bytes.of(0x55, 0x00, 0xFF, 0x31, 0x80, 0x01, 0xA5, 0x00);

    private final EventOrder events = new EventOrder(new TraceSink() {}, (rank, at, index, serial) -> true);
    private final Wire wire = new Wire(events, 2, true);
    private final UartClock clock = UartClock.exact(BAUD);
    private final Frame frame = new Frame(TraceSink.CONTROLLER, 0, clock, CharacterFormat.EIGHT_N_ONE);
    private final Uart ear =
            new Uart(0, clock.bitNanos(), Transceiver.USUAL.samplesPerBit(), Transceiver.USUAL.receiver(), 1);
    private final Reception reception = new Reception(
            CharacterFormat.EIGHT_N_ONE,
            DroplineFrames.create(),
            0,
            clock.bitNanos(),
            new Noise(true, 1),
            said -> SAID,
            true);
    private long now;

    @Benchmark
    public boolean frameBitByBit() {
        now += EVERY_NANOS;
        frame.kind = TraceSink.REQUEST;
        frame.time(now, SAID.length(), 0, 0);
        wire.begin(frame);
        boolean received = reception.received(frame, wire, ear);
        frame.heard = true;
        events.release(now);
        return received;
    }
}
