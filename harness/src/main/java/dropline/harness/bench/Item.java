package dropline.harness.bench;

import dropline.harness.verdict.Outcome;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One thing that was examined.
 *
 * @param name a stable word: {@code reply-gap}
 * @param outcome undecided where this link cannot tell
 * @param says what came out, in a sentence
 * @param trials how often it was tried
 * @param measure what was measured, where it is a time
 * @param suspects fault kinds that look like this, as 'dropline faults' names them; empty where it passes
 */
public record Item(
        String name,
        Outcome outcome,
        String says,
        int trials,
        @Nullable Measure measure,
        List<String> suspects) {

    /**
     * A time.
     *
     * @param valueNanos what was measured, ns
     * @param limitNanos at most this is right, ns; or at least, where {@code atLeast}
     * @param uncertaintyNanos the true value may be smaller by so much, ns
     */
    public record Measure(long valueNanos, long limitNanos, boolean atLeast, long uncertaintyNanos) {
        /** How far it is on the right side, ns. */
        public long marginNanos() {
            return atLeast ? valueNanos - limitNanos : limitNanos - valueNanos;
        }
    }

    public Item {
        suspects = List.copyOf(suspects);
    }
}
