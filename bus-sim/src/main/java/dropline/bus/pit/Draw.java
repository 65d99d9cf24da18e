package dropline.bus.pit;

/**
 * The current that something takes from its supply while it runs.
 *
 * @param microamps how much, uA; -1 where nobody said
 * @param guessed whether that is a guess, or a sum with one in it
 */
public record Draw(long microamps, boolean guessed) {
    /** In place of a current of which nothing is said. */
    public static final Draw UNKNOWN = new Draw(-1, false);

    public Draw {
        if (microamps < -1 || (microamps == -1 && guessed)) {
            throw new IllegalArgumentException("a current must not be negative, an unknown one not guessed: microamps="
                    + microamps + " guessed=" + guessed);
        }
    }

    public boolean isKnown() {
        return microamps >= 0;
    }

    /** Both together: unknown if one of them is, guessed if one of them is. */
    public Draw plus(Draw other) {
        return isKnown() && other.isKnown()
                ? new Draw(Math.addExact(microamps, other.microamps), guessed || other.guessed)
                : UNKNOWN;
    }
}
