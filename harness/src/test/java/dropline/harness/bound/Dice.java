package dropline.harness.bound;

import dropline.bus.chance.Draws;
import java.util.List;

/** One number after another, all from one seed. */
final class Dice {
    private final long stream;
    private long drawn;

    Dice(long seed) {
        stream = Draws.mix(seed);
    }

    /** Uniform in [0, 1). */
    double next() {
        return Draws.draw(stream, drawn++);
    }

    /** From 0 up to, not including, {@code limit}. */
    int below(int limit) {
        return (int) (next() * limit);
    }

    /** From {@code low} up to {@code high}, more often low than high. */
    long between(long low, long high) {
        return low + (long) (next() * next() * (high - low));
    }

    /** As above, but now and then so far beyond {@code high} that it outweighs everything else. */
    long rarelyHuge(long low, long high) {
        return oneIn(8) ? low + 30 * (high - low) : between(low, high);
    }

    /** True once in so many times. */
    boolean oneIn(int times) {
        return below(times) == 0;
    }

    <T> T of(List<T> choices) {
        return choices.get(below(choices.size()));
    }
}
