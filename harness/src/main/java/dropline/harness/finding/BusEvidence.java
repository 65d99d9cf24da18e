package dropline.harness.finding;

/**
 * What was seen of a segment as a whole, of its controller and of the host. Written by the folds, read by the rules.
 */
final class BusEvidence {
    private static final long TOGETHER_NANOS = 100_000_000L;

    /** End of the run, ns. */
    long endedNanos;

    // --- host

    int statesSent;

    /** Longest time without a state though there was something to tell, ns; the instant is its begin. */
    final Sightings noState = new Sightings();

    /** From sent by the host to queued, ns, beyond what the adapter allows. */
    final Sightings slowState = new Sightings();

    /** From a good reply to its being told or taken, ns, beyond what the adapter allows. */
    final Sightings slowReply = new Sightings();

    // --- frames

    int polls;
    int answers;

    /** Polls that failed whoever they were for. */
    final Sightings failures = new Sightings();

    /** State frames for all, right after a reply and otherwise. */
    int broadcastsAfterReply;

    int broadcastsOtherwise;

    /** Frames that carry values. */
    int stateFrames;

    /** Frames with values that all they were for, or most, got wrong though nobody else talked. */
    final Sightings stateFramesLost = new Sightings();

    /** Polls without values, likewise. */
    final Sightings plainFramesLost = new Sightings();

    /** Values sent again though unchanged. */
    final Sightings sentAgain = new Sightings();

    // --- what the controller hears

    /** Its own frames, heard by itself. */
    final Sightings echoes = new Sightings();

    /** Replies it received wrong though nobody else talked; the talker. */
    final Sightings wrongReplies = new Sightings();

    /** Good replies since the first of them. */
    int answersSinceWrong;

    /** Characters that nobody sent, at any receiver. */
    final Sightings phantoms = new Sightings();

    /** Instants at which a frame was received wrong, by anybody, though nobody else talked. */
    final Sightings wrong = new Sightings();

    /** Of these, those not preceded by characters that nobody sent. */
    int wrongWithoutPhantom;

    final Sightings clashes = new Sightings();

    /** Nodes that restarted within a tenth of a second of the first of them, at most. */
    int restartsTogether;

    private long restartNanos = Long.MIN_VALUE / 2;
    private int restarts;

    void restarted(long atNanos) {
        if (atNanos - restartNanos > TOGETHER_NANOS) {
            restartNanos = atNanos;
            restarts = 0;
        }
        restarts++;
        restartsTogether = Math.max(restartsTogether, restarts);
    }
}
