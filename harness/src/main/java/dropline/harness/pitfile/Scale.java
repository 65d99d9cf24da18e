package dropline.harness.pitfile;

import dropline.bus.chance.Distribution;
import java.util.Optional;

/** By how much a guessed figure may be out. */
public enum Scale {
    HALF(0.5, "half"),
    DOUBLE(2, "double");

    private final double factor;
    private final String word;

    Scale(double factor, String word) {
        this.factor = factor;
        this.word = word;
    }

    /** In a word: {@code half}. */
    public String word() {
        return word;
    }

    double of(double value) {
        return value * factor;
    }

    long of(long value) {
        return this == HALF ? value / 2 : Math.multiplyExact(value, 2);
    }

    /** A value within bounds; empty where the scaled one is not, or is no other. */
    Optional<Long> within(long value, long least, long most) {
        long scaled = value > Long.MAX_VALUE / 2 ? Long.MAX_VALUE : of(value);
        return scaled == value || scaled < least || scaled > most ? Optional.empty() : Optional.of(scaled);
    }

    /** A random time of the same shape; empty where it is no other. */
    Optional<Distribution> of(Distribution time) {
        long most = time.maxNanos() > Long.MAX_VALUE / 2 ? Long.MAX_VALUE : of(time.maxNanos());
        Distribution scaled = new Distribution(time.shape(), of(time.baseNanos()), of(time.spreadNanos()), most);
        return scaled.equals(time) ? Optional.empty() : Optional.of(scaled);
    }
}
