package dropline.harness.finding;

/** What one control was seen to do. Written by the folds, read by the rules. */
final class ControlEvidence {
    /** Index of the control in the pit's layout. */
    final int control;

    int moves;

    /** Moves its node ought to have believed and did not. */
    final Sightings missed = new Sightings();

    /** What its node believed though nobody moved it. */
    final Sightings invented = new Sightings();

    /** What the host was told of. */
    final Sightings told = new Sightings();

    /** The most the host was told of within one second. */
    int mostToldInASecond;

    // --- while folding

    int waitingSerial;
    long waitingNanos = -1;
    int believedSerial;
    int toldSerial;
    long toldSecond = -1;
    int toldInSecond;

    ControlEvidence(int control) {
        this.control = control;
    }
}
