package dropline.bus.bound;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a latency never exceeds, and what that is made of.
 *
 * @param parts the longest that each stage can take, in order of time; empty where nothing can be said
 * @param obstacle why there is no bound; null where there is one. With {@link Obstacle.Kind#REPLACED} the parts still
 *     hold for a value that stands long enough to be reached
 */
public record Bound(List<Part> parts, @Nullable Obstacle obstacle) {

    /** The longest that one stage can take, ns. */
    public record Part(Stage stage, long nanos) {}

    public Bound {
        parts = List.copyOf(parts);
        for (Part part : parts) {
            if (part.nanos() < 0) {
                throw new IllegalArgumentException("a stage must not be negative: parts=" + parts);
            }
        }
    }

    static Bound without(Obstacle obstacle) {
        return new Bound(List.of(), obstacle);
    }

    /** Whether there is one. */
    public boolean isFinite() {
        return obstacle == null;
    }

    /** No latency is longer, ns; {@link Long#MAX_VALUE} where there is no bound. */
    public long nanos() {
        return isFinite() ? sumNanos() : Long.MAX_VALUE;
    }

    /** What the parts add up to, whether or not that is a bound, ns. */
    public long sumNanos() {
        return parts.stream().mapToLong(Part::nanos).sum();
    }

    /** The longest that one stage can take, ns; 0 where it has no part. */
    public long nanos(Stage stage) {
        return parts.stream()
                .filter(part -> part.stage() == stage)
                .mapToLong(Part::nanos)
                .sum();
    }
}
