package dropline.bus.avr.part;

/**
 * How far a timer has counted. A period is a number of phases, one a tick: up to the top and back to nought at once, or
 * up and down again. Something happens with the tick that leaves a phase.
 */
final class Counter {
    /** No tick ever. */
    private static final int STOPPED = 0;

    private final int max;
    private int top;
    private boolean isDual;
    private int divisor = STOPPED;
    private long dividedFrom;
    private long at;
    private int phase;
    private boolean isBlocked;

    Counter(int max) {
        this.max = max;
        top = max;
    }

    /** What a timer does when its counter gets somewhere. */
    interface Arrivals {
        /** The counter leaves a value that is compared with, going up or down. */
        void matched(int channel, boolean isUp, long cycle);

        /** The top is left, or in one that counts both ways, reached. */
        void top(long cycle);

        /** Nought is reached. */
        void bottom(long cycle);
    }

    void shape(int newTop, boolean dual, long cycle) {
        int was = count();
        boolean isFalling = isDual && phase > top;
        top = newTop;
        isDual = dual;
        phase = isDual && isFalling && was <= top ? 2 * top - was : was;
        at = cycle;
    }

    /** @param newDivisor cycles a tick; 0 stops it */
    void divide(int newDivisor) {
        divisor = newDivisor;
    }

    void divideAnew(long cycle) {
        dividedFrom = cycle;
    }

    boolean isRunning() {
        return divisor != STOPPED;
    }

    int count() {
        return isDual && phase > top ? 2 * top - phase : phase;
    }

    void set(int count, long cycle) {
        phase = count;
        at = cycle;
        isBlocked = true;
    }

    private int last() {
        if (isDual) {
            return Math.max(1, 2 * top) - 1;
        }
        return phase > top ? max : top;
    }

    private long ticks(long cycle) {
        return divisor == STOPPED ? 0 : Math.floorDiv(cycle - dividedFrom, divisor);
    }

    /** Counts up to a cycle, and tells of all that it comes by on the way. */
    void run(long cycle, int[] compared, Arrivals arrivals) {
        long left = ticks(cycle) - ticks(at);
        long tick = ticks(at);
        while (left > 0) {
            int step = (int) Math.min(left, nextStop(compared) - phase + 1L);
            tick += step;
            left -= step;
            leave(step, dividedFrom + tick * divisor, compared, arrivals);
        }
        at = Math.max(at, cycle);
    }

    /** Goes on by so many ticks, of which only the last one leaves a phase where something happens. */
    private void leave(int step, long cycle, int[] compared, Arrivals arrivals) {
        int left = phase + step - 1;
        int end = last();
        isBlocked &= step == 1;
        phase = left == end ? 0 : left + 1;
        if (!isBlocked) {
            for (int channel = 0; channel < compared.length; channel++) {
                if (left == compared[channel]) {
                    arrivals.matched(channel, true, cycle);
                } else if (isDual && left == 2 * top - compared[channel]) {
                    arrivals.matched(channel, false, cycle);
                }
            }
        }
        isBlocked = false;
        if (isDual ? phase == top : left == end) {
            arrivals.top(cycle);
        }
        if (phase == 0) {
            arrivals.bottom(cycle);
        }
    }

    /** The next phase, from this one on, with which something happens. */
    private int nextStop(int[] compared) {
        int stop = last();
        if (isDual && phase < top) {
            stop = Math.min(stop, top - 1);
        }
        for (int value : compared) {
            stop = value >= phase ? Math.min(stop, value) : stop;
            int down = 2 * top - value;
            stop = isDual && down >= phase ? Math.min(stop, down) : stop;
        }
        return stop;
    }

    /** When something happens next, if it runs. */
    long next(int[] compared) {
        if (divisor == STOPPED) {
            return Long.MAX_VALUE;
        }
        return dividedFrom + (ticks(at) + nextStop(compared) - phase + 1) * divisor;
    }
}
