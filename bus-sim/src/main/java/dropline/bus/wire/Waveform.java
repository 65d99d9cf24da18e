package dropline.bus.wire;

import dropline.bus.chance.Draws;
import dropline.bus.pit.Transceiver;
import dropline.protocol.Bytes;
import dropline.protocol.CharacterFormat;
import java.util.Arrays;

/**
 * What stands on the pair, as one receiver sees it, over one stretch: one driver, its level; drivers that agree, that
 * level; drivers that disagree, drawn for this receiver and interval; none, the bias, or else noise. A burst of noise
 * covers everything.
 */
final class Waveform {
    /** Nothing changes after this. */
    static final double NEVER = Double.POSITIVE_INFINITY;

    /**
     * An unbiased idle pair drops to zero for one bit in so many. A model: how often it really does hangs on the room.
     */
    private static final double IDLE_NOISE = 1.0 / 64;

    private static final Bytes NOTHING = Bytes.of();

    private final Wire.Content content;
    private final Noise noise;
    private final double slotNanos;
    private Frame[] frames = new Frame[8];
    private Bytes[] bytes = new Bytes[8];
    private int count;

    /** @param nominalBitNanos how long a bit is at the segment's baud rate, ns */
    Waveform(Wire.Content content, Noise noise, double nominalBitNanos) {
        this.content = content;
        this.noise = noise;
        slotNanos = nominalBitNanos / 2;
    }

    void clear() {
        count = 0;
    }

    /** Adds a transmission. */
    void add(Frame frame) {
        Bytes sent = frame.chars == 0 ? NOTHING : content.of(frame);
        if (sent.length() != frame.chars) {
            throw new IllegalStateException("a frame must have as many bytes as characters: bytes=" + sent.length()
                    + " chars=" + frame.chars + " kind=" + frame.kind + " talker=" + frame.talker);
        }
        if (count == frames.length) {
            frames = Arrays.copyOf(frames, 2 * count);
            bytes = Arrays.copyOf(bytes, 2 * count);
        }
        frames[count] = frame;
        bytes[count++] = sent;
    }

    /** Whether nobody drives the pair. */
    boolean isEmpty() {
        return count == 0;
    }

    /** Whether anybody drives the pair, or noise covers it. */
    boolean isDriven(double atNanos) {
        for (int i = 0; i < count; i++) {
            if (drives(i, atNanos)) {
                return true;
            }
        }
        return false;
    }

    /** The level, 0 or 1. */
    int level(double atNanos, Uart receiver) {
        long burst = noise.burstAt((long) atNanos);
        if (burst >= 0) {
            return drawn(burst, (long) (atNanos / slotNanos), 0.5);
        }
        int drivers = 0;
        int ones = 0;
        double since = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            if (!drives(i, atNanos)) {
                continue;
            }
            if (frames[i].talker == receiver.party && receiver.whileSending != Transceiver.Receiver.ALWAYS_ON) {
                return receiver.whileSending == Transceiver.Receiver.OFF_WHILE_SENDING
                        ? 1
                        : drawn(receiver.stream, (long) (atNanos / slotNanos), 0.5);
            }
            double bits = (atNanos - frames[i].startNanos) / frames[i].bitNanos();
            int level = bit(i, bits);
            if (level == 1 && frames[i].zerosOnly) {
                continue;
            }
            drivers++;
            ones += level;
            since = Math.max(since, bits < 0 ? frames[i].driverOnNanos : edge(i, bits));
        }
        if (drivers == 0) {
            return noise.biased() ? 1 : 1 - drawn(receiver.stream, (long) (atNanos / (2 * slotNanos)), IDLE_NOISE);
        }
        return ones == 0 || ones == drivers ? ones / drivers : drawn(receiver.stream, (long) since, 0.5);
    }

    /** The next instant at which the level may differ from what it is now. */
    double nextChange(double atNanos) {
        double next = noise.quietAfter((long) atNanos) ? NEVER : (Math.floor(atNanos / slotNanos) + 1) * slotNanos;
        for (int i = 0; i < count; i++) {
            Frame frame = frames[i];
            next = earlier(next, frame.driverOnNanos, atNanos);
            next = earlier(next, frame.driverOffNanos, atNanos);
            next = earlier(next, frame.startNanos, atNanos);
            if (atNanos >= frame.startNanos && atNanos < frame.endNanos) {
                double bits = Math.floor((atNanos - frame.startNanos) / frame.bitNanos()) + 1;
                double boundary = frame.startNanos + bits * frame.bitNanos();
                // A boundary that rounding puts at this very instant has been passed.
                next = Math.min(next, boundary > atNanos ? boundary : boundary + frame.bitNanos());
            }
        }
        return next;
    }

    private static double earlier(double next, double candidate, double atNanos) {
        return candidate > atNanos ? Math.min(next, candidate) : next;
    }

    private static int drawn(long stream, long ordinal, double chance) {
        return Draws.draw(stream, ordinal) < chance ? 1 : 0;
    }

    /** Whether a transmission's driver is on; one that is stuck sends its frames through the same driver. */
    private boolean drives(int i, double atNanos) {
        Frame frame = frames[i];
        if (atNanos < frame.driverOnNanos || atNanos >= frame.driverOffNanos) {
            return false;
        }
        for (int other = 0; frame.chars == 0 && other < count; other++) {
            Frame own = frames[other];
            if (own != frame && own.talker == frame.talker && atNanos >= own.startNanos && atNanos < own.endNanos) {
                return false;
            }
        }
        return true;
    }

    private double edge(int i, double bits) {
        return frames[i].startNanos + Math.floor(bits) * frames[i].bitNanos();
    }

    private int bit(int i, double bits) {
        Frame frame = frames[i];
        CharacterFormat format = frame.format();
        if (bits < 0 || bits >= (double) format.bits() * frame.chars) {
            return 1;
        }
        int whole = (int) bits;
        return format.bit(bytes[i].at(whole / format.bits()), whole % format.bits());
    }
}
