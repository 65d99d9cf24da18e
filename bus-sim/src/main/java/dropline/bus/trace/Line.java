package dropline.bus.trace;

/**
 * Events that are posted in order of time but for a few: a ring, sorted from its end. An event that comes out of turn
 * moves those behind it.
 */
final class Line extends Pending {
    private static final int CAPACITY = 64;

    private int begin;
    private int end;
    private int mask = CAPACITY - 1;

    Line() {
        super(CAPACITY);
    }

    @Override
    int add(long atNanos, long itsOrder) {
        if (end - begin > mask) {
            grow();
        }
        int place = end++;
        int to = offset(place);
        while (place != begin) {
            int before = offset(place - 1);
            if (words[before] < atNanos || (words[before] == atNanos && words[before + Event.ORDER] < itsOrder)) {
                break;
            }
            System.arraycopy(words, before, words, to, Event.WORDS);
            to = before;
            place--;
        }
        words[to] = atNanos;
        words[to + Event.ORDER] = itsOrder;
        if (place == begin) {
            head();
        }
        return to;
    }

    @Override
    void pass() {
        begin++;
        head();
    }

    private void head() {
        if (begin == end) {
            at = NEVER;
            return;
        }
        first = offset(begin);
        at = words[first];
        order = words[first + Event.ORDER];
    }

    private int offset(int place) {
        return (place & mask) * Event.WORDS;
    }

    private void grow() {
        long[] longer = new long[words.length * 2];
        int places = (mask + 1) * 2;
        for (int place = begin; place != end; place++) {
            System.arraycopy(words, offset(place), longer, (place & (places - 1)) * Event.WORDS, Event.WORDS);
        }
        words = longer;
        mask = places - 1;
        head();
    }
}
