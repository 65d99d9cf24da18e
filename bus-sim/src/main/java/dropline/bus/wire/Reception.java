package dropline.bus.wire;

import dropline.bus.clock.ClockTolerance;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import dropline.protocol.Protocol;
import dropline.protocol.Protocol.Framing;

/**
 * Whether a receiver has a frame. A frame that nothing touches, whose driver covers it, on a held pair, between clocks
 * that agree, is had as a whole. Anything else is decided bit by bit, for this frame and this receiver alone.
 *
 * <p>A frame that arrives with a wrong character is lost: that a check overlooks it (one in 65,536) is left out.
 */
public final class Reception {
    /** Nearer than this to the limit of what a receiver takes, a frame is decided bit by bit. */
    private static final double NEAR_THE_LIMIT = 0.001;

    /** How many characters before its driver a frame's receiver may have been led astray by an idle pair. */
    private static final int LEAD_CHARACTERS = 20;

    private final CharacterFormat format;
    private final Framing framing;
    private final int delimiter;
    private final long silenceNanos;
    private final double nominalBitNanos;
    private final long leadNanos;
    private final Noise noise;
    private final boolean everywhere;
    private final Wire.Content content;
    private final Waveform wave;
    private final ClockTolerance eightSamples;
    private final ClockTolerance sixteenSamples;
    private final Sampler sampler = new Sampler();
    private int phantoms;

    /**
     * @param silenceNanos silence before a frame, where that tells its begin
     * @param nominalBitNanos how long a bit is at the segment's baud rate, ns
     * @param everywhere whether to decide every frame bit by bit
     */
    public Reception(
            CharacterFormat format,
            Protocol protocol,
            long silenceNanos,
            double nominalBitNanos,
            Noise noise,
            Wire.Content content,
            boolean everywhere) {
        this.format = format;
        this.framing = protocol.framing();
        this.delimiter = protocol.delimiter();
        this.silenceNanos = silenceNanos;
        this.nominalBitNanos = nominalBitNanos;
        leadNanos = (long) (LEAD_CHARACTERS * format.bits() * nominalBitNanos);
        this.noise = noise;
        this.content = content;
        this.everywhere = everywhere;
        eightSamples = ClockTolerance.of(format, 8).within(NEAR_THE_LIMIT);
        sixteenSamples = ClockTolerance.of(format, 16).within(NEAR_THE_LIMIT);
        wave = new Waveform(content, noise, nominalBitNanos);
    }

    /** Whether a receiver has a frame, asked at the instant it would be heard. */
    public boolean received(Frame frame, Wire wire, Uart uart) {
        phantoms = 0;
        return !frame.damaged && ((isWhole(frame) && agrees(frame, uart)) || decided(frame, wire, uart));
    }

    /** Characters before the last frame asked for that nobody sent. */
    public int phantoms() {
        return phantoms;
    }

    /** The characters that came of the last frame decided bit by bit, whatever they are. */
    public Bytes sampled() {
        int[] values = new int[sampler.count()];
        for (int i = 0; i < values.length; i++) {
            values[i] = sampler.value(i);
        }
        return Bytes.of(values);
    }

    /** Whether a receiver whose clock agrees with its talker's has a frame for certain. */
    public boolean isWhole(Frame frame) {
        return !frame.damaged
                && !everywhere
                && !frame.clashed
                && frame.driverOnNanos <= frame.startNanos
                && frame.driverOffNanos >= frame.endNanos
                && (noise.isAbsent() || !noise.disturbs(earliest(frame), frame.heardNanos));
    }

    /** Whether a receiver's clock agrees with a frame's. */
    public boolean agrees(Frame frame, Uart uart) {
        return uart.agreesWith(frame.bitNanos(), uart.samplesPerBit == 8 ? eightSamples : sixteenSamples);
    }

    private boolean decided(Frame frame, Wire wire, Uart uart) {
        long from = wire.collect(frame, wave);
        if (noise.disturbs(earliest(frame), frame.heardNanos)) {
            from = Math.min(from, earliest(frame));
        }
        Bytes sent = content.of(frame);
        sampler.listen(wave, uart, format, from, frame.heardNanos + 2 * uart.bitNanos);
        return isAmong(sent, frame);
    }

    /** The last thing before a frame that may matter to it. */
    private long earliest(Frame frame) {
        return Math.max(frame.quietSinceNanos, Math.min(frame.driverOnNanos, frame.startNanos) - leadNanos);
    }

    private boolean isAmong(Bytes sent, Frame frame) {
        boolean found = false;
        for (int i = 0; i < sampler.count(); i++) {
            if (!wave.isDriven(sampler.startNanos(i))) {
                phantoms++;
            }
            found |= startsAt(i, sent, frame);
        }
        return found;
    }

    private boolean startsAt(int index, Bytes sent, Frame frame) {
        if (index + sent.length() > sampler.count()
                || sampler.startNanos(index) < frame.startNanos - nominalBitNanos
                || !isFrameBegin(index)) {
            return false;
        }
        for (int i = 0; i < sent.length(); i++) {
            if (!sampler.isGood(index + i) || sampler.value(index + i) != (sent.at(i) & mask())) {
                return false;
            }
        }
        return true;
    }

    private boolean isFrameBegin(int index) {
        if (index == 0) {
            return true;
        }
        return switch (framing) {
            case ANYWHERE -> true;
            case AFTER_DELIMITER -> sampler.isGood(index - 1) && sampler.value(index - 1) == delimiter;
            case AFTER_SILENCE ->
                sampler.startNanos(index) - sampler.startNanos(index - 1) - format.bits() * nominalBitNanos
                        >= silenceNanos - nominalBitNanos;
        };
    }

    private int mask() {
        return (1 << format.dataBits()) - 1;
    }
}
