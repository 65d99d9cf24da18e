package dropline.harness.pitfile;

import org.jspecify.annotations.Nullable;

/**
 * A key of the pit file, declared once: parser, problems and reference page follow from it.
 *
 * @param name as written
 * @param type how its value is written
 * @param need whether it must be there
 * @param standard what counts where the key is left out, as one would write it; null where nothing does
 * @param doc one line for the reference page
 */
record Key<T>(
        String name, Type<T> type, Need need, @Nullable String standard, String doc) {

    /** Whether a key must be there. */
    enum Need {
        REQUIRED,
        OPTIONAL
    }

    /** A key that must be written. */
    static <T> Key<T> required(String name, Type<T> type, String doc) {
        return new Key<>(name, type, Need.REQUIRED, null, doc);
    }

    /** A key that may be left out, with what then counts. */
    static <T> Key<T> standard(String name, Type<T> type, String standard, String doc) {
        return new Key<>(name, type, Need.OPTIONAL, standard, doc);
    }

    /** A key that may be left out; {@code doc} says what that means. */
    static <T> Key<T> optional(String name, Type<T> type, String doc) {
        return new Key<>(name, type, Need.OPTIONAL, null, doc);
    }
}
