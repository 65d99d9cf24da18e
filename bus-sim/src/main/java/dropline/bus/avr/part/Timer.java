package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;
import dropline.bus.avr.core.Registers;
import dropline.bus.avr.core.Served;
import java.util.Arrays;

/** A timer of 8 or 16 bits (DS40002061, "8-bit Timer/Counter0 with PWM", "16-bit Timer/Counter1 with PWM"). */
public final class Timer implements Registers, Served, Counter.Arrivals {
    private static final int[] NOWHERE = {};
    private static final int CAPTURED = 0x20;
    private static final int OVERFLOWN = 1;

    /**
     * Where a timer stands.
     *
     * @param isWide whether it has 16 bits
     * @param control address of TCCRnA
     * @param count address of TCNTn, its low byte
     * @param compare address of OCRnA, its low byte; the others follow
     * @param channels how many values it compares with
     * @param flags address of TIFRn
     * @param mask address of TIMSKn
     * @param firstVector the lowest of its vectors: "capture" where it has that, "compare A" and so on, "overflow"
     * @param divisors cycles a tick for each setting of CSn, 0 for none, -1 for what is not modelled
     * @param isShared whether its divider is the one that most timers share
     */
    public record Place(
            boolean isWide,
            int control,
            int count,
            int compare,
            int channels,
            int flags,
            int mask,
            int firstVector,
            Divisors divisors,
            boolean isShared) {}

    /** Cycles a tick for each setting of the clock select. */
    public enum Divisors {
        /** Most timers'. */
        USUAL,
        /** Timer 2's. */
        FINE;

        /** 0 where the timer stands, -1 for what is not modelled. */
        private int cycles(int setting) {
            return switch (this) {
                case USUAL -> setting < 3 ? setting == 2 ? 8 : setting : setting < 6 ? 1 << 2 * setting : -1;
                case FINE ->
                    switch (setting) {
                        case 0, 1 -> setting;
                        case 2 -> 8;
                        case 6 -> 256;
                        case 7 -> 1024;
                        default -> 1 << setting + 2;
                    };
            };
        }
    }

    private final Cpu cpu;
    private final Place place;
    private final int max;
    private final int alarm;
    private final Counter counter;
    private final int[] compared;
    private final int[] buffered;
    private final Outputs outputs;
    private TimerMode mode = TimerMode.of(0, false);
    private int controlA;
    private int controlB;
    private int enabled;
    private int flags;
    private int capture;
    private int temporary;

    public Timer(Cpu cpu, Prescaler prescaler, Place place) {
        this.cpu = cpu;
        this.place = place;
        max = place.isWide() ? 0xFFFF : 0xFF;
        counter = new Counter(max);
        prescaler.serves(counter, place.isShared());
        compared = new int[place.channels()];
        buffered = new int[place.channels()];
        outputs = new Outputs(place.channels());
        alarm = cpu.add(this::happen);
        int width = place.isWide() ? 2 : 1;
        for (int i = 0; i < (place.isWide() ? 3 : 2); i++) {
            cpu.claim(this, place.control() + i);
        }
        for (int i = 0; i < width; i++) {
            cpu.claim(this, place.count() + i);
        }
        for (int i = 0; i < place.channels() * width; i++) {
            cpu.claim(this, place.compare() + i);
        }
        if (place.isWide()) {
            cpu.claim(this, place.count() + 2, place.count() + 3);
        }
        cpu.claim(this, place.flags(), place.mask());
        for (int i = 0; i < vectors(); i++) {
            cpu.own(place.firstVector() + i, this);
        }
    }

    private int vectors() {
        return place.channels() + (place.isWide() ? 2 : 1);
    }

    /** The pin of an output. */
    public void connect(int channel, Port port, int bit) {
        outputs.connect(channel, port, bit);
    }

    /** The pin whose edges are captured. */
    public void capture(Port port, int bit) {
        port.watch((levels, changed, cycle) -> {
            boolean isWanted = (levels >> bit & 1) == (controlB >> 6 & 1);
            if ((changed >> bit & 1) != 0 && isWanted) {
                counter.run(cycle, compared, this);
                capture = counter.count();
                flags |= CAPTURED;
                settle();
            }
        });
    }

    public void reset() {
        controlA = 0;
        controlB = 0;
        enabled = 0;
        flags = 0;
        Arrays.fill(compared, 0);
        Arrays.fill(buffered, 0);
        counter.divide(0);
        counter.set(0, cpu.cycles());
        shape(cpu.cycles());
    }

    private int channelBit(int channel) {
        return 2 << channel;
    }

    @Override
    public void matched(int channel, boolean isUp, long cycle) {
        flags |= channelBit(channel);
        outputs.matched(channel, controlA, mode, isUp, cycle);
    }

    @Override
    public void top(long cycle) {
        if (mode.isBufferedToTop()) {
            load();
        }
        if (mode.overflowsAtTop() || (!mode.isDual() && top() == max)) {
            flags |= OVERFLOWN;
        }
    }

    @Override
    public void bottom(long cycle) {
        if (mode.isBuffered() && !mode.isBufferedToTop()) {
            load();
        }
        if (mode.isDual()) {
            flags |= OVERFLOWN;
        }
        outputs.bottom(controlA, mode, cycle);
    }

    private void load() {
        System.arraycopy(buffered, 0, compared, 0, compared.length);
        counter.shape(top(), mode.isDual(), cpu.cycles());
    }

    private int top() {
        return mode.top(max, compared[0], capture);
    }

    private void shape(long cycle) {
        int bits = controlA & 3 | controlB >> 1 & (place.isWide() ? 0xC : 0x4);
        mode = TimerMode.of(bits, place.isWide());
        counter.shape(top(), mode.isDual(), cycle);
        outputs.choose(controlA, mode, cycle);
        settle();
    }

    private void happen(long cycle) {
        counter.run(cycle, compared, this);
        settle();
    }

    /** Asks for what is due, and is due when that may change. */
    private void settle() {
        int vector = place.firstVector();
        if (place.isWide()) {
            cpu.request(vector++, (flags & enabled & CAPTURED) != 0);
        }
        for (int channel = 0; channel < place.channels(); channel++) {
            cpu.request(vector++, (flags & enabled & channelBit(channel)) != 0);
        }
        cpu.request(vector, (flags & enabled & OVERFLOWN) != 0);
        boolean isWatched = counter.isRunning() && ((enabled & ~CAPTURED) != 0 || outputs.isAny(controlA));
        boolean onlyOverflow = (enabled & ~CAPTURED) == OVERFLOWN && !outputs.isAny(controlA);
        cpu.due(alarm, isWatched ? counter.next(onlyOverflow ? NOWHERE : compared) : Long.MAX_VALUE);
    }

    @Override
    public void served(int vector) {
        int number = vector - place.firstVector() - (place.isWide() ? 1 : 0);
        flags &= number < 0 ? ~CAPTURED : number < place.channels() ? ~channelBit(number) : ~OVERFLOWN;
        settle();
    }

    @Override
    public int read(int address, long cycle) {
        if (address == place.flags() || isCount(address)) {
            counter.run(cycle, compared, this);
            cpu.acted();
        }
        if (address == place.flags()) {
            settle();
            return flags;
        }
        if (address == place.mask()) {
            return enabled;
        }
        if (address - place.control() == 0 || address - place.control() == 1) {
            return address == place.control() ? controlA : controlB;
        }
        if (isCount(address)) {
            settle();
            return part(address - place.count(), counter.count());
        }
        if (place.isWide() && address >= place.count() + 2 && address < place.count() + 4) {
            return part(address - place.count(), capture);
        }
        int width = place.isWide() ? 2 : 1;
        int offset = address - place.compare();
        if (offset >= 0 && offset < width * place.channels()) {
            return buffered[offset / width] >> (offset % width * 8) & 0xFF;
        }
        return 0;
    }

    private boolean isCount(int address) {
        return address == place.count() || (place.isWide() && address == place.count() + 1);
    }

    /** The low byte, which keeps the high one for later; or that one. */
    private int part(int offset, int value) {
        if ((offset & 1) == 1) {
            return temporary;
        }
        temporary = value >> 8;
        return value & 0xFF;
    }

    @Override
    public void write(int address, int value, long cycle) {
        cpu.acted();
        counter.run(cycle, compared, this);
        if (address == place.flags()) {
            flags &= ~value;
        } else if (address == place.mask()) {
            enabled = value;
        } else if (address == place.control()) {
            controlA = value;
            shape(cycle);
        } else if (address == place.control() + 1) {
            controlB = value;
            divide(value & 7);
            shape(cycle);
        } else if (place.isWide() && address == place.control() + 2) {
            outputs.force(value, controlA, mode, cycle);
        } else {
            writeCount(address, value, cycle);
        }
        settle();
    }

    private void divide(int setting) {
        int divisor = place.divisors().cycles(setting);
        if (divisor < 0) {
            throw cpu.stop("a timer that counts edges at a pin (CS 6 or 7) is not modelled");
        }
        counter.divide(divisor);
    }

    private void writeCount(int address, int value, long cycle) {
        int width = place.isWide() ? 2 : 1;
        boolean isPair = width == 2 && address >= place.count() && address < place.count() + 4;
        int offset = isPair ? address - place.count() : address - place.compare();
        if (width == 2 && (offset & 1) == 1) {
            temporary = value;
            return;
        }
        int whole = width == 2 ? temporary << 8 | value : value;
        if (address == place.count()) {
            counter.set(whole, cycle);
        } else if (isPair) {
            capture = whole;
            shape(cycle);
        } else {
            buffered[offset / width] = whole;
            if (!mode.isBuffered()) {
                compared[offset / width] = whole;
                shape(cycle);
            }
        }
    }

    @Override
    public boolean isByOnes(int address) {
        return address == place.flags();
    }
}
