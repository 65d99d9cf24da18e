package dropline.harness.finding;

/** What one place that shows a signal was seen to do. Written by the folds, read by the rules. */
final class SlotEvidence {
    /** Index of the slot in the pit's layout. */
    final int slot;

    int applied;
    int shown;

    /** Values applied and not shown when they had to be; ns late so far. */
    final Sightings frozen = new Sightings();

    // --- what moves

    /** Moves whose end could be held against what was commanded. */
    int moves;

    /** Moves that ended in the wrong place; the error in units of the resolution. */
    final Sightings astray = new Sightings();

    /** Moves whose error is not the one of the move before; by how much it grew. */
    final Sightings errorChanges = new Sightings();

    /** Of those, the ones that fell short of where they went. */
    int errorChangesShort;

    /** Moves that ended short of where they went by an error, from below and from above. */
    int shortUp;

    int shortDown;

    long firstError;
    long lastError;

    // --- while folding

    int pendingSerial;
    long pendingNanos = -1;
    boolean overdue;
    /** The value it was last seen going to. */
    int aimedSerial;
    /** A motion has begun whose end was not held against what was commanded yet. */
    boolean moving;

    long restNanos;
    /** When it has found its zero after a restart. */
    long zeroedNanos;

    long movedFrom;
    long movedTo;

    SlotEvidence(int slot) {
        this.slot = slot;
    }

    void error(long atNanos, long error, long distance) {
        if (moves++ == 0) {
            firstError = error;
        } else if (error != lastError) {
            errorChanges.add(atNanos, error - lastError);
            errorChangesShort += Long.signum(error - lastError) == -Long.signum(distance) ? 1 : 0;
        }
        if (error != 0) {
            astray.add(atNanos, error);
            shortUp += distance > 0 && error < 0 ? 1 : 0;
            shortDown += distance < 0 && error > 0 ? 1 : 0;
        }
        lastError = error;
    }
}
