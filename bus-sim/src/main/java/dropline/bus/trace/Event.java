package dropline.bus.trace;

/** How an event's integers lie in the words in which it waits, and how they are handed over. */
final class Event {
    /** Its instant, its order at that instant, four integers in two words, one in one, three large ones. */
    static final int WORDS = 8;

    static final int ORDER = 1;
    static final int AB = 2;
    static final int CD = 3;
    static final int E = 4;
    static final int X = 5;
    static final int Y = 6;
    static final int Z = 7;

    private Event() {}

    static int a(long[] words, int event) {
        return (int) (words[event + AB] >> 32);
    }

    static int b(long[] words, int event) {
        return (int) words[event + AB];
    }

    static void digest(long[] words, int event, Rank rank, Digest digest) {
        digest.add(words[event]);
        digest.add(((long) rank.ordinal() << 32) ^ a(words, event));
        digest.add(((long) b(words, event) << 32) ^ (words[event + CD] >>> 32));
        digest.add((words[event + CD] << 32) ^ (words[event + E] & 0xFFFFFFFFL));
        digest.add(words[event + X] + 31 * words[event + Y] + 961 * words[event + Z]);
    }

    /** Calls the sink's method for this kind of event. */
    static void hand(long[] words, int event, Rank rank, TraceSink sink) {
        long at = words[event];
        int a = a(words, event);
        int b = b(words, event);
        int c = (int) (words[event + CD] >> 32);
        int d = (int) words[event + CD];
        long x = words[event + X];
        switch (rank) {
            case MOVED -> sink.moved(at, a, x, words[event + Y], words[event + Z]);
            case STATE_CHANGED -> sink.stateChanged(at, a, b, x);
            case CONTROL_MOVED -> sink.controlMoved(at, a, b, c);
            case STATE_SENT -> sink.stateSent(at);
            case COALESCED -> sink.coalesced(at, a, b, c);
            case QUEUED -> sink.queued(at, a, b, c);
            case FRAME_ENDED -> sink.frameEnded(at, a, b, c, d);
            case DRIVER_OFF -> sink.driverOff(at, a);
            case RESET -> sink.reset(at, a, x);
            case PHANTOM -> sink.phantom(at, a, b);
            case RECEIVED_WRONG -> sink.receivedWrong(at, a, b, c);
            case OVERRUN -> sink.overrun(at, a, b);
            case ANSWERED -> sink.answered(at, a, b, c, x);
            case NODE_STATUS -> sink.nodeStatus(at, a, b, c, x, words[event + Y]);
            case TIMED_OUT -> sink.timedOut(at, a, b, c);
            case GAVE_UP -> sink.gaveUp(at, a, b);
            case BACKED_OFF -> sink.backedOff(at, a, x);
            case APPLIED -> sink.applied(at, a, b, x);
            case SHOWN -> sink.shown(at, a, b);
            case SAMPLED -> sink.sampled(at, a, b);
            case TOLD -> sink.told(at, a, b);
            case CYCLE_STARTED -> sink.cycleStarted(at, b);
            case DRIVER_ON -> sink.driverOn(at, a);
            case CLASH -> sink.clash(at, a, b);
            case FRAME_STARTED -> sink.frameStarted(at, a, b, c, d, (int) words[event + E]);
            case CARRIED -> sink.carried(at, a, b, c, d);
        }
    }
}
