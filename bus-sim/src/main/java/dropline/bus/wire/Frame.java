package dropline.bus.wire;

import dropline.bus.clock.UartClock;
import dropline.protocol.CharacterFormat;
import java.util.Arrays;

/**
 * One transmission: a frame's description, driver on to driver off. Its bytes do not exist here. Each talker owns one
 * and reuses it, so that nothing is allocated per frame; all times are ns since the start of the run.
 */
public final class Frame {
    /** In place of a kind: characters sent for no reason. Nobody takes them for a frame. */
    public static final int BABBLE = 3;

    /** In place of a kind: one character of an emulated board's; what frame it belongs to turns out later. */
    public static final int CHARACTER = 4;

    /** {@link dropline.bus.trace.TraceSink#REQUEST} and its kin, {@link #BABBLE} or {@link #CHARACTER}. */
    public int kind;

    /** Node index, or {@link dropline.bus.trace.TraceSink#CONTROLLER}. */
    public final int talker;

    /** The node polled or replying, or {@link dropline.bus.trace.TraceSink#ALL}. */
    public int node;

    /** Polls or broadcasts of the segment so far, from 1. */
    public int transaction;

    /** Tries of this transaction so far, from 1. */
    public int attempt;

    /** Characters on the wire. */
    public int chars;

    /** First start bit. */
    public long startNanos;

    /** End of the last stop bit. */
    public long endNanos;

    /** When receivers have the last character: the sample of its stop bit. */
    public long heardNanos;

    public long driverOnNanos;
    public long driverOffNanos;

    /** Another transmission touched it before it was heard: nobody receives it. */
    public boolean clashed;

    /** It has been received, so nothing can destroy it any more. */
    public boolean heard;

    /** Request: broadcasts sent so far. Reply: the last one its node has without a gap before it. */
    public int lastBroadcast;

    /** It goes out damaged: nobody has it. */
    public boolean damaged;

    /** Only its zeros are driven. */
    public boolean zerosOnly;

    /** When the last driver before it let go, ns. */
    public long quietSinceNanos;

    /** How many transmissions came before it. */
    public long number;

    /** One of several that a driver carries without letting go: what it touches, that driver touches. */
    public boolean isPart;

    /** Slots of the destination it carries values for. */
    public final int[] picked;

    /** The serial of each picked value. */
    public final int[] serials;

    /** Each picked value, in units of the signal's resolution. */
    public final long[] values;

    /** How many are picked. */
    public int count;

    private final long[] bits;
    private UartClock clock;
    private double bitNanos;
    private final CharacterFormat format;
    private int measuredChars;
    private long spanNanos;
    private long spanToHeardNanos;
    private long charNanos;

    /**
     * @param talker who sends it
     * @param slots how many values it may carry at most
     * @param clock times its bits
     */
    public Frame(int talker, int slots, UartClock clock, CharacterFormat format) {
        this.talker = talker;
        this.picked = new int[slots];
        this.serials = new int[slots];
        this.values = new long[slots];
        this.bits = new long[words(slots)];
        this.clock = clock;
        bitNanos = clock.bitNanos();
        this.format = format;
    }

    /** Sets every instant from the first start bit on. */
    public void time(long firstStartNanos, int length, long leadNanos, long tailNanos) {
        if (length != measuredChars) {
            measuredChars = length;
            spanNanos = clock.charsNanos(format, length);
            spanToHeardNanos = clock.heardNanos(format, length);
            charNanos = spanNanos / length;
        }
        startNanos = firstStartNanos;
        chars = length;
        endNanos = startNanos + spanNanos;
        heardNanos = startNanos + spanToHeardNanos;
        driverOnNanos = startNanos - leadNanos;
        driverOffNanos = endNanos + tailNanos;
        clashed = false;
        heard = false;
    }

    /** Words for a set of slots: a bit for each. */
    public static int words(int slots) {
        return (slots + Long.SIZE - 1) / Long.SIZE;
    }

    /** Takes note of the slots that it now carries values for, so that nodes can tell at a glance. */
    public void noteSlots() {
        Arrays.fill(bits, 0);
        for (int i = 0; i < count; i++) {
            bits[picked[i] / Long.SIZE] |= 1L << picked[i];
        }
    }

    /**
     * Whether it carries a value for any of these slots, going by what was noted.
     *
     * @param slots a bit for each slot of the destination
     */
    public boolean carriesAnyOf(long[] slots) {
        long any = 0;
        for (int i = 0; i < slots.length; i++) {
            any |= bits[i] & slots[i];
        }
        return any != 0;
    }

    /** Sets the clock that times its bits from now on. */
    public void timedBy(UartClock other) {
        if (!other.equals(clock)) {
            clock = other;
            bitNanos = other.bitNanos();
            measuredChars = 0;
        }
    }

    /** Makes it a driver that is on and sends nothing. */
    public void drive(long onNanos, long offNanos) {
        chars = 0;
        startNanos = onNanos;
        endNanos = onNanos;
        heardNanos = onNanos;
        driverOnNanos = onNanos;
        driverOffNanos = offNanos;
        clashed = false;
        heard = true;
    }

    /** How long a bit is by its talker's clock, ns. */
    public double bitNanos() {
        return bitNanos;
    }

    /** How its characters stand on the wire. */
    public CharacterFormat format() {
        return format;
    }

    /** How long one of its characters lasts, ns, rounded down. */
    public long charNanos() {
        return charNanos;
    }
}
