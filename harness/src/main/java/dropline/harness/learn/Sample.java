package dropline.harness.learn;

import dropline.bus.clock.UartClock;
import dropline.harness.link.Arrival;
import dropline.protocol.CharacterFormat;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Bytes in the order they came, and the silence before each. */
final class Sample {
    private final byte[] bytes;
    private final long[] silenceNanos;

    private Sample(byte[] bytes, long[] silenceNanos) {
        this.bytes = bytes;
        this.silenceNanos = silenceNanos;
    }

    /**
     * @param arrivals each dated at the end of its last byte, as a link does
     * @param baud at which they came, bits a second
     * @param most so many bytes at most; what came later is left out
     */
    static Sample of(List<Arrival.Received> arrivals, int baud, int most) {
        int count = Math.min(
                most, arrivals.stream().mapToInt(a -> a.bytes().length()).sum());
        byte[] bytes = new byte[count];
        long[] silences = new long[count];
        UartClock clock = UartClock.exact(baud);
        long last = Long.MIN_VALUE / 2;
        int at = 0;
        for (Arrival.Received arrival : arrivals) {
            int length = arrival.bytes().length();
            for (int i = 0; i < length && at < count; i++) {
                long begin = arrival.atNanos() - clock.charsNanos(CharacterFormat.EIGHT_N_ONE, length);
                silences[at] = i == 0 ? Math.max(0, begin - last) : 0;
                bytes[at++] = (byte) arrival.bytes().at(i);
            }
            last = arrival.atNanos();
        }
        return new Sample(bytes, silences);
    }

    /** The first part of it. */
    Sample begin(int most) {
        int count = Math.min(most, bytes.length);
        return new Sample(Arrays.copyOf(bytes, count), Arrays.copyOf(silenceNanos, count));
    }

    int length() {
        return bytes.length;
    }

    int at(int index) {
        return bytes[index] & 0xFF;
    }

    byte[] part(int from, int to) {
        return Arrays.copyOfRange(bytes, from, to);
    }

    byte[] bytes() {
        return bytes;
    }

    long silenceNanos(int index) {
        return silenceNanos[index];
    }

    /** Values that make up at least this share of all bytes, the most frequent first. */
    List<Integer> frequent(double share, int most) {
        int[] counts = new int[256];
        for (byte b : bytes) {
            counts[b & 0xFF]++;
        }
        List<Integer> values = new ArrayList<>();
        for (int value = 0; value < counts.length; value++) {
            if (counts[value] >= share * bytes.length) {
                values.add(value);
            }
        }
        values.sort((a, b) -> counts[b] - counts[a]);
        return values.subList(0, Math.min(most, values.size()));
    }
}
