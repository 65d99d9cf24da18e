package dropline.harness.measure;

import dropline.bus.trace.TraceSink;

/** What happened on a segment's wire: counts, time in use, poll cycles, reply gaps. */
public final class BusMeasure {
    private final Times cycles = new Times();
    private final CycleSeries cycleSeries = new CycleSeries();
    private final Mishaps mishaps;
    private long cycleStartNanos = -1;
    private int framesUnderWay;
    private long busyFromNanos;
    private long busyNanos;
    private long endNanos;
    private int lastTransaction;
    private long lastStateFrameNanos = -1;
    private long asked;
    private long answered;
    private final long[] answeredOf;
    private final long[] gapSumOf;
    private long retried;
    private long gapSumNanos;
    private long gapMinNanos = Long.MAX_VALUE;
    private long gapMaxNanos = Long.MIN_VALUE;
    private long timedOut;
    private long gaveUp;
    private long backOffs;
    private long clashes;
    private long overruns;
    private long wrong;
    private long stateFrames;

    /** {@code nodes}: how many nodes the pit has, on all its segments. */
    BusMeasure(int nodes) {
        mishaps = new Mishaps(nodes);
        answeredOf = new long[nodes];
        gapSumOf = new long[nodes];
    }

    void frameStarted(long atNanos, int frame, int transaction) {
        if (framesUnderWay++ == 0) {
            busyFromNanos = atNanos;
        }
        if (frame == TraceSink.REQUEST) {
            if (transaction == lastTransaction) {
                retried++;
            } else {
                asked++;
                lastTransaction = transaction;
            }
        }
    }

    void frameEnded(long atNanos) {
        if (--framesUnderWay == 0) {
            busyNanos += atNanos - busyFromNanos;
        }
    }

    void carried(long atNanos) {
        if (atNanos != lastStateFrameNanos) {
            stateFrames++;
            lastStateFrameNanos = atNanos;
        }
    }

    void cycleStarted(long atNanos) {
        if (cycleStartNanos >= 0) {
            cycles.add(atNanos - cycleStartNanos);
            cycleSeries.add(cycleStartNanos, atNanos - cycleStartNanos);
        }
        cycleStartNanos = atNanos;
    }

    void answered(int node, long gapNanos) {
        answered++;
        answeredOf[node]++;
        gapSumOf[node] += gapNanos;
        gapSumNanos += gapNanos;
        gapMinNanos = Math.min(gapMinNanos, gapNanos);
        gapMaxNanos = Math.max(gapMaxNanos, gapNanos);
    }

    void countTimeOut(int node) {
        timedOut++;
        mishaps.countTimeOut(node);
    }

    void countGivenUp() {
        gaveUp++;
    }

    void countBackOff() {
        backOffs++;
    }

    void countClash(int talker, int other) {
        clashes++;
        mishaps.countClash(talker, other);
    }

    void countWrong() {
        wrong++;
    }

    void countOverrun(int node) {
        overruns++;
        mishaps.countOverrun(node);
    }

    void ended(long atNanos) {
        endNanos = atNanos;
        if (framesUnderWay > 0) {
            busyNanos += atNanos - busyFromNanos;
            framesUnderWay = 0;
        }
    }

    /** Time in which at least one frame was on the wire, ns. */
    public long busyNanos() {
        return busyNanos;
    }

    /** That as a share of the run, 0..1. */
    public double utilisation() {
        return endNanos == 0 ? 0 : (double) busyNanos / endNanos;
    }

    /** Full rounds of polls, from start to start. */
    public Times cycles() {
        return cycles;
    }

    public CycleSeries cycleSeries() {
        return cycleSeries;
    }

    /** Transactions begun; a retry is not one. */
    public long asked() {
        return asked;
    }

    /** Transactions with a whole, good reply. */
    /** Good replies of one node, by its index in the layout. */
    public long answered(int node) {
        return answeredOf[node];
    }

    /** Its mean reply gap, ns, rounded down; 0 without a reply. */
    public long gapMeanNanos(int node) {
        return answeredOf[node] == 0 ? 0 : Math.floorDiv(gapSumOf[node], answeredOf[node]);
    }

    public long answered() {
        return answered;
    }

    public long retried() {
        return retried;
    }

    /** Tries without a good reply. */
    public long timedOut() {
        return timedOut;
    }

    public long gaveUp() {
        return gaveUp;
    }

    public long backOffs() {
        return backOffs;
    }

    public long clashes() {
        return clashes;
    }

    /** Frames that a receiver they were for did not get as they were sent, and stretches of phantoms. */
    public long wrong() {
        return wrong;
    }

    public long overruns() {
        return overruns;
    }

    /** Time-outs, overruns and clashes by node. */
    public Mishaps mishaps() {
        return mishaps;
    }

    /** Frames that carried at least one value. */
    public long stateFrames() {
        return stateFrames;
    }

    /** 0 if there was no reply. */
    public long gapMinNanos() {
        return answered == 0 ? 0 : gapMinNanos;
    }

    /** 0 if there was no reply. */
    public long gapMeanNanos() {
        return answered == 0 ? 0 : Math.floorDiv(gapSumNanos, answered);
    }

    /** 0 if there was no reply. */
    public long gapMaxNanos() {
        return answered == 0 ? 0 : gapMaxNanos;
    }
}
