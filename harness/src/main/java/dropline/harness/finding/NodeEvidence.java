package dropline.harness.finding;

/** What one node was seen to do. Written by the folds, read by the rules. */
final class NodeEvidence {
    /** Index of the node in the pit's layout. */
    final int node;

    // --- polls

    /** Requests sent to it, retries included. */
    int asked;

    /** Of these, those it sent a frame after. */
    int replied;

    /** Good replies the controller took. */
    int answered;

    /** Requests in a row without a frame of its own and without a reason seen. */
    int silentRun;

    /** The longest such run. */
    int longestSilentRun;

    /** No frame came and no reason was seen; the amount is how many in a row. */
    final Sightings silent = new Sightings();

    /** No frame came, for it received the request wrong though nobody else talked. */
    final Sightings deaf = new Sightings();

    /** No frame came, for another transmission touched the request. */
    final Sightings deafened = new Sightings();

    /** No frame came while it was starting. */
    final Sightings starting = new Sightings();

    /** It sent a frame, and the controller did not take it. */
    final Sightings unheard = new Sightings();

    /** No good reply in time; the amount is the attempt. */
    final Sightings timeOuts = new Sightings();

    final Sightings gaveUp = new Sightings();

    /** Time-outs since its last answer. */
    int failingRun;

    int longestFailingRun;

    // --- what it sends

    /** Driver on after the first start bit; ns. */
    final Sightings lateEnable = new Sightings();

    /** Driver on sooner than its lead; ns beyond it. */
    final Sightings earlyEnable = new Sightings();

    /** Driver off later than its tail; ns beyond it. */
    final Sightings lateRelease = new Sightings();

    /** Driver off before the last stop bit's end; ns before it. */
    final Sightings earlyRelease = new Sightings();

    /** Driver on and idle for very long; ns. */
    final Sightings held = new Sightings();

    /** A reply sooner than its profile allows; the gap in ns. */
    final Sightings tooSoon = new Sightings();

    /** A reply later than its profile and what blocks it allow; the gap in ns. */
    final Sightings late = new Sightings();

    /** Frames that answer nothing; characters. */
    final Sightings babble = new Sightings();

    /** Replies to polls of another node; its index. */
    final Sightings forAnother = new Sightings();

    /** Requests sent to it, and replied to by it, since the first of those. */
    int askedSince;

    int repliedSince;

    /** Frames it sent. */
    int frames;

    /** Frames clearly faster (below 0, slower) than described; by how many parts in a million. */
    final Sightings fast = new Sightings();

    // --- what it hears

    /** Frames of the controller it received wrong though no other transmission touched them. */
    final Sightings wrong = new Sightings();

    /** Of these, those right after a reply. */
    int wrongAfterReply;

    /** Replies it made since the first of them. */
    int repliedSinceWrong;

    /** Requests to it right after a reply, and all others. */
    int askedAfterReply;

    int askedOtherwise;

    /** Characters nobody sent. */
    final Sightings phantoms = new Sightings();

    /** Of these, those right after a frame of its own. */
    final Sightings phantomsOfOwn = new Sightings();

    /** Frames lost in its buffers; characters of the frame. */
    final Sightings overruns = new Sightings();

    /** Groups of these with no frame taken in between. */
    int overrunEpisodes;

    /** Overruns so soon after its loop was seen running that its ring cannot have been full. */
    int overrunsWithRoom;

    /** Characters on the pair when its loop was last seen running. */
    long charsWhenRunning = Long.MIN_VALUE / 2;

    long runningNanos = Long.MIN_VALUE / 2;

    /** Lost the last frame meant for it. */
    boolean losing;

    /** The longest frame it is known to have taken since the first of them, characters. */
    int longestTaken;

    /** Values its program took later than described; ns from heard to applied. */
    final Sightings slowApplied = new Sightings();

    final Sightings resets = new Sightings();

    // --- what it says of itself

    boolean spoke;
    final Sightings boots = new Sightings();
    final Sightings receiveErrors = new Sightings();

    /** Longest loops beyond what is described, ns. */
    final Sightings longLoops = new Sightings();

    private int lastBoots;
    private int lastErrors;

    NodeEvidence(int node) {
        this.node = node;
    }

    void running(long atNanos, long charsSoFar) {
        runningNanos = atNanos;
        charsWhenRunning = charsSoFar;
    }

    void status(long atNanos, int bootCount, int errors, long longestLoopNanos, long loopLimitNanos) {
        if (spoke && bootCount != lastBoots) {
            boots.add(atNanos, bootCount - lastBoots);
        }
        if (errors != lastErrors) {
            receiveErrors.add(atNanos, Math.max(1, errors - lastErrors));
        }
        if (longestLoopNanos > loopLimitNanos) {
            longLoops.add(atNanos, longestLoopNanos);
        }
        spoke = true;
        lastBoots = bootCount;
        lastErrors = errors;
    }
}
