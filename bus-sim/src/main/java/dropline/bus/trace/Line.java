package dropline.bus.trace;

/** Events that are posted in order of time but for a few; one that comes out of turn moves those behind it. */
final class Line extends Pending {
    private static final int CAPACITY = 64;

    private int begin;
    private int end;

    Line() {
        super(CAPACITY);
    }

    @Override
    int add(long atNanos, long itsOrder) {
        if (end == words.length) {
            makeRoom();
        }
        int place = end;
        while (place != begin && comesAfter(place - Event.WORDS, atNanos, itsOrder)) {
            place -= Event.WORDS;
        }
        if (place != end) {
            System.arraycopy(words, place, words, place + Event.WORDS, end - place);
        }
        end += Event.WORDS;
        words[place] = atNanos;
        words[place + Event.ORDER] = itsOrder;
        if (place == begin) {
            head();
        }
        return place;
    }

    private boolean comesAfter(int event, long atNanos, long itsOrder) {
        return words[event] > atNanos || (words[event] == atNanos && words[event + Event.ORDER] > itsOrder);
    }

    @Override
    void pass() {
        begin += Event.WORDS;
        if (begin == end) {
            begin = 0;
            end = 0;
            at = NEVER;
        } else {
            head();
        }
    }

    private void head() {
        first = begin;
        at = words[begin];
        order = words[begin + Event.ORDER];
    }

    /** Moves all to the front, into more room where more than half of it is in use. */
    private void makeRoom() {
        long[] room = end - begin > words.length / 2 ? new long[words.length * 2] : words;
        System.arraycopy(words, begin, room, 0, end - begin);
        words = room;
        end -= begin;
        begin = 0;
        first = 0;
    }
}
