package dropline.harness.finding;

import java.util.Locale;

/** How sure a finding is. */
public enum Confidence {
    /** Nothing else leaves this trace. */
    CERTAIN,
    /** Seen often enough, and nothing that is more common explains it. */
    LIKELY,
    /** Seen, and it may have another reason. */
    POSSIBLE;

    /** {@code certain}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
