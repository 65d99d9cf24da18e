package dropline.bus.avr.part;

import dropline.bus.avr.core.Cpu;

/**
 * Receives: a shift register and two characters behind it. Sixteen samples a bit, or eight at double speed; a bit is
 * what two of the three in its middle say. A third character waits in the shift register, and is lost as soon as a
 * fourth one's start bit is sure (DS40002061, "Asynchronous Data Reception", "Data OverRun").
 */
final class Receiver {
    private static final int FRAME_ERROR = 1 << 9;
    private static final int PARITY_ERROR = 1 << 10;
    private static final int HELD = 2;

    private final Usart usart;
    private final Cpu cpu;
    private final int alarm;
    private final int[] buffer = new int[HELD];
    private final long[] thereSince = new long[HELD + 1];
    final Line line = new Line();
    boolean isOverrun;
    int overruns;
    long firstOverrun = -1;
    long longestWait;
    private boolean isOn;
    private int holds;
    private boolean isWaiting;
    private int waiting;
    private boolean isInside;
    private double startedAt;
    private double searchFrom;

    Receiver(Usart usart, Cpu cpu) {
        this.usart = usart;
        this.cpu = cpu;
        alarm = cpu.add(this::happen);
    }

    void reset() {
        isOn = false;
        flush();
    }

    private void flush() {
        holds = 0;
        isWaiting = false;
        isInside = false;
        isOverrun = false;
        cpu.due(alarm, Long.MAX_VALUE);
    }

    void enable(boolean isWanted, long cycle) {
        if (isWanted == isOn) {
            return;
        }
        isOn = isWanted;
        flush();
        searchFrom = cycle;
        lineChanged();
    }

    int holds() {
        return holds;
    }

    boolean isFull() {
        return isWaiting;
    }

    boolean hasFrameError() {
        return holds > 0 && (buffer[0] & FRAME_ERROR) != 0;
    }

    boolean hasParityError() {
        return holds > 0 && (buffer[0] & PARITY_ERROR) != 0;
    }

    int ninth() {
        return buffer[0] >> 8 & 1;
    }

    /** UDR is read. */
    int take() {
        int taken = buffer[0] & 0xFF;
        isOverrun = false;
        if (holds > 0) {
            longestWait = Math.max(longestWait, cpu.cycles() - thereSince[0]);
            buffer[0] = buffer[1];
            thereSince[0] = thereSince[1];
            thereSince[1] = thereSince[2];
            holds--;
        }
        if (isWaiting) {
            isWaiting = false;
            keep(waiting);
        }
        usart.ask();
        return taken;
    }

    private void keep(int character) {
        if (holds < HELD) {
            buffer[holds++] = character;
        } else {
            isWaiting = true;
            waiting = character;
        }
    }

    /** Looks for a start bit, if it is not in a character. */
    void lineChanged() {
        if (!isOn) {
            line.forgetBefore(cpu.cycles());
        } else if (!isInside) {
            search();
        }
    }

    private void search() {
        double fall = line.fallFrom(searchFrom);
        if (fall == Double.POSITIVE_INFINITY) {
            cpu.due(alarm, Long.MAX_VALUE);
            return;
        }
        int sample = usart.sampleCycles();
        // the first sample after the edge is number 1, so that number k stands k samples after the one before it
        startedAt = Math.floor(fall / sample) * sample;
        cpu.due(alarm, (long) voted(0));
    }

    /** The last of a bit's samples that count. */
    private double voted(int bit) {
        return startedAt + (bit * usart.samples() + usart.samples() / 2 + 2) * (double) usart.sampleCycles();
    }

    private int vote(int bit) {
        double last = voted(bit);
        int sample = usart.sampleCycles();
        int ones = line.level(last) + line.level(last - sample) + line.level(last - 2 * sample);
        return ones >= 2 ? 1 : 0;
    }

    private void happen(long cycle) {
        if (isInside) {
            isInside = false;
            // two samples decide: the next start bit may begin right after the middle one, as the sheet's Rfast has it
            searchFrom = cycle - usart.sampleCycles();
            character();
            line.forgetBefore(searchFrom);
            search();
        } else if (vote(0) == 0) {
            begin(cycle);
        } else {
            searchFrom = cycle;
            search();
        }
    }

    private void begin(long cycle) {
        isInside = true;
        if (isWaiting) {
            isWaiting = false;
            isOverrun = true;
            overruns++;
            firstOverrun = firstOverrun < 0 ? cycle : firstOverrun;
        }
        cpu.due(alarm, (long) voted(stopBit()));
    }

    private int stopBit() {
        return 1 + usart.dataBits() + (usart.parity() >= 2 ? 1 : 0);
    }

    private void character() {
        int data = usart.dataBits();
        int value = 0;
        for (int i = 0; i < data; i++) {
            value |= vote(1 + i) << i;
        }
        int parity = usart.parity();
        boolean isOdd = parity >= 2 && (Integer.bitCount(value) & 1 ^ vote(1 + data)) != (parity & 1);
        int stop = vote(stopBit());
        int marks = data == 9 ? value >> 8 : stop;
        if (!usart.isMulti() || marks == 1) {
            thereSince[holds] = cpu.cycles();
            keep(value | (stop == 0 ? FRAME_ERROR : 0) | (isOdd ? PARITY_ERROR : 0));
            usart.ask();
        }
    }
}
