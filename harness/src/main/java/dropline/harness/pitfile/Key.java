package dropline.harness.pitfile;

import org.jspecify.annotations.Nullable;

/**
 * A key of the pit file, declared once: parser, problems and reference page follow from it.
 *
 * @param name as written
 * @param type how its value is written
 * @param need whether it must be there
 * @param standard what counts where the key is left out, as one would write it; null where nothing does
 * @param bearing whether its value describes hardware or firmware, so that its origin may be written with it
 * @param doc one line for the reference page
 */
record Key<T>(
        String name, Type<T> type, Need need, @Nullable String standard, Bearing bearing, String doc) {

    /** Whether a key must be there. */
    enum Need {
        REQUIRED,
        OPTIONAL
    }

    /** What a figure bears on. */
    enum Bearing {
        /** It is no figure but a choice. */
        NONE,
        /** When things happen: what a replay rests on. */
        TIMING,
        /** Currents, loads and resistors. */
        ELECTRICAL
    }

    /** A key that must be written. */
    static <T> Key<T> required(String name, Type<T> type, String doc) {
        return new Key<>(name, type, Need.REQUIRED, null, Bearing.NONE, doc);
    }

    /** A key that may be left out, with what then counts. */
    static <T> Key<T> standard(String name, Type<T> type, String standard, String doc) {
        return new Key<>(name, type, Need.OPTIONAL, standard, Bearing.NONE, doc);
    }

    /** A key that may be left out; {@code doc} says what that means. */
    static <T> Key<T> optional(String name, Type<T> type, String doc) {
        return new Key<>(name, type, Need.OPTIONAL, null, Bearing.NONE, doc);
    }

    /** The same key, whose value describes hardware or firmware: it may be about, measured, or that of a preset. */
    Key<T> figure() {
        return new Key<>(name, type, need, standard, Bearing.TIMING, doc);
    }

    /** The same, for a figure that no time hangs on. */
    Key<T> electrical() {
        return new Key<>(name, type, need, standard, Bearing.ELECTRICAL, doc);
    }

    boolean isFigure() {
        return bearing != Bearing.NONE;
    }
}
