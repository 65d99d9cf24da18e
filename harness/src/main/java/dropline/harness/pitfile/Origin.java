package dropline.harness.pitfile;

import java.util.Locale;

/** Where a figure of a pit comes from. */
public enum Origin {
    MEASURED,
    PRESET,
    GUESSED,
    UNSTATED;

    /** In a word: {@code measured}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
