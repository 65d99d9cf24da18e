package dropline.bus.trace;

/** An event while it is handed over: its instant and its integers, unpacked from the words it waited in. */
final class Event {
    /** An event's words: its instant, its order at that instant, four integers in two words, one, three large ones. */
    static final int WORDS = 8;

    static final int ORDER = 1;
    static final int AB = 2;
    static final int CD = 3;
    static final int E = 4;
    static final int X = 5;
    static final int Y = 6;
    static final int Z = 7;

    long at;
    int a;
    int b;
    int c;
    int d;
    int e;
    long x;
    long y;
    long z;

    void read(long[] words, int event) {
        at = words[event];
        a = (int) (words[event + AB] >> 32);
        b = (int) words[event + AB];
        c = (int) (words[event + CD] >> 32);
        d = (int) words[event + CD];
        e = (int) words[event + E];
        x = words[event + X];
        y = words[event + Y];
        z = words[event + Z];
    }

    void digest(Digest digest, Rank rank) {
        digest.add(at);
        digest.add(((long) rank.ordinal() << 32) ^ a);
        digest.add(((long) b << 32) ^ (c & 0xFFFFFFFFL));
        digest.add(((long) d << 32) ^ (e & 0xFFFFFFFFL));
        digest.add(x + 31 * y + 961 * z);
    }
}
