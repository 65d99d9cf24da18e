package dropline.harness.symptom;

import dropline.bus.fault.FaultKind;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a builder sees.
 *
 * @param see in a builder's words
 * @param words by which it is found, beside those
 * @param likely what may be behind it, the likeliest first
 */
public record Symptom(String see, String words, List<Cause> likely) {

    /**
     * What may be behind a symptom, and how to find out.
     *
     * @param fault a kind of the catalogue; null where it is something else
     * @param name the kind's word, or what else it is
     * @param why how it brings the symptom about
     * @param by what it is tested with
     * @param test what to do; for {@link By#COMMAND} the command
     * @param then what to look for once the command has run; empty otherwise
     */
    public record Cause(@Nullable FaultKind fault, String name, String why, By by, String test, String then) {}

    /** How to test. */
    public enum By {
        EYE,
        METER,
        SWAP,
        COMMAND
    }

    public Symptom {
        likely = List.copyOf(likely);
        if (see.isBlank() || likely.size() < 2) {
            throw new IllegalArgumentException("a symptom must have a name and several causes: see=" + see);
        }
    }
}
