package dropline.bus.wire;

import dropline.protocol.CharacterFormat;
import java.util.Arrays;

/**
 * A UART's receiver at work: the characters it makes of what stands on the pair. Sixteen (or eight) samples a bit,
 * counted from the first that is zero; a bit is what two of the three samples in its middle say; a stop bit must be one
 * at the first and the middle of them, which gives the published limits of tolerance (Microchip, AVR USART,
 * "Asynchronous Operational Range").
 */
final class Sampler {
    private int[] values = new int[256];
    private boolean[] good = new boolean[256];
    private double[] starts = new double[256];
    private int count;

    int count() {
        return count;
    }

    int value(int index) {
        return values[index];
    }

    /** Whether its start, parity and stop bits were as they must be. */
    boolean isGood(int index) {
        return good[index];
    }

    /** The sample that was taken for its start, ns. */
    double startNanos(int index) {
        return starts[index];
    }

    /** Listens from an instant at which nothing is under way to one at which nothing more begins. */
    void listen(Waveform wave, Uart uart, CharacterFormat format, double fromNanos, double toNanos) {
        count = 0;
        double step = uart.sampleNanos();
        double origin = fromNanos - uart.phase((long) fromNanos) * step;
        long tick = 1;
        boolean sawOne = true;
        while (origin + tick * step < toNanos) {
            double at = origin + tick * step;
            if (wave.level(at, uart) == 1) {
                sawOne = true;
                double change = wave.nextChange(at);
                tick = change == Waveform.NEVER
                        ? Long.MAX_VALUE / 4
                        : Math.max(tick + 1, sampleAt(change, origin, step));
            } else if (!sawOne) {
                tick++;
            } else {
                int before = count;
                tick = character(wave, uart, format, origin, tick);
                sawOne = count == before || good[count - 1];
            }
        }
    }

    private static long sampleAt(double nanos, double origin, double step) {
        return (long) Math.ceil((nanos - origin) / step);
    }

    /** Takes a character whose first zero is this sample; returns the sample to go on from. */
    private long character(Waveform wave, Uart uart, CharacterFormat format, double origin, long first) {
        double step = uart.sampleNanos();
        int samples = uart.samplesPerBit;
        if (bit(wave, uart, origin, first) != 0) {
            return first + uart.middleSample;
        }
        int value = 0;
        int parity = 0;
        for (int i = 0; i < format.dataBits(); i++) {
            int bit = bit(wave, uart, origin, first + (long) (i + 1) * samples);
            value |= bit << i;
            parity ^= bit;
        }
        int bits = 1 + format.dataBits();
        boolean right = true;
        if (format.parity() != CharacterFormat.Parity.NONE) {
            parity ^= bit(wave, uart, origin, first + (long) bits * samples);
            right = parity == (format.parity() == CharacterFormat.Parity.EVEN ? 0 : 1);
            bits++;
        }
        long stop = first + (long) bits * samples;
        right &= wave.level(origin + (stop + uart.firstSample - 1) * step, uart) == 1
                && wave.level(origin + (stop + uart.middleSample - 1) * step, uart) == 1;
        keep(value, right, origin + first * step);
        return stop + uart.middleSample;
    }

    /** A bit whose first sample is this one. */
    private static int bit(Waveform wave, Uart uart, double origin, long sample) {
        double step = uart.sampleNanos();
        int ones = 0;
        for (int i = 0; i < 3; i++) {
            ones += wave.level(origin + (sample + uart.firstSample - 1 + i) * step, uart);
        }
        return ones >= 2 ? 1 : 0;
    }

    private void keep(int value, boolean right, double startNanos) {
        if (count == values.length) {
            values = Arrays.copyOf(values, 2 * count);
            good = Arrays.copyOf(good, 2 * count);
            starts = Arrays.copyOf(starts, 2 * count);
        }
        values[count] = value;
        good[count] = right;
        starts[count++] = startNanos;
    }
}
