package dropline.bus.trace;

import java.util.Arrays;

/** Events known long before their time, in any order: a binary heap of places in the words. */
final class Ahead extends Pending {
    private static final int CAPACITY = 256;

    private int[] free = new int[CAPACITY];
    private int freeCount;
    private int[] heap = new int[CAPACITY];
    private int size;

    Ahead() {
        super(CAPACITY);
        freeFrom(0);
    }

    @Override
    int add(long atNanos, long itsOrder) {
        if (freeCount == 0) {
            grow();
        }
        int event = free[--freeCount];
        words[event] = atNanos;
        words[event + Event.ORDER] = itsOrder;
        int child = size++;
        while (child > 0) {
            int parent = (child - 1) >>> 1;
            if (!before(event, heap[parent])) {
                break;
            }
            heap[child] = heap[parent];
            child = parent;
        }
        heap[child] = event;
        if (child == 0) {
            head();
        }
        return event;
    }

    @Override
    void pass() {
        free[freeCount++] = first;
        int event = heap[--size];
        int parent = 0;
        while (true) {
            int child = 2 * parent + 1;
            if (child >= size) {
                break;
            }
            if (child + 1 < size && before(heap[child + 1], heap[child])) {
                child++;
            }
            if (!before(heap[child], event)) {
                break;
            }
            heap[parent] = heap[child];
            parent = child;
        }
        heap[parent] = event;
        head();
    }

    private void head() {
        if (size == 0) {
            at = NEVER;
            return;
        }
        first = heap[0];
        at = words[first];
        order = words[first + Event.ORDER];
    }

    private boolean before(int one, int other) {
        long difference = words[one] - words[other];
        return difference != 0 ? difference < 0 : words[one + Event.ORDER] < words[other + Event.ORDER];
    }

    private void grow() {
        int old = free.length;
        words = Arrays.copyOf(words, words.length * 2);
        free = new int[old * 2];
        heap = Arrays.copyOf(heap, old * 2);
        freeFrom(old);
    }

    /** Frees the room of every event from this one on. */
    private void freeFrom(int event) {
        for (int i = free.length - 1; i >= event; i--) {
            free[freeCount++] = i * Event.WORDS;
        }
    }
}
