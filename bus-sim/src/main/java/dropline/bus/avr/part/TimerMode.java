package dropline.bus.avr.part;

/** How a timer counts: WGMn (DS40002061, tables "Waveform Generation Mode Bit Description"). */
final class TimerMode {
    private enum Way {
        NORMAL,
        CLEARED,
        FAST,
        CORRECT,
        CORRECT_FREQUENCY
    }

    private static final int OCRA = -1;
    private static final int ICR = -2;
    private static final int MAX = -3;

    private final Way way;
    private final int topKind;

    private TimerMode(Way way, int topKind) {
        this.way = way;
        this.topKind = topKind;
    }

    static TimerMode of(int bits, boolean isWide) {
        return isWide ? wide(bits) : narrow(bits);
    }

    private static TimerMode narrow(int bits) {
        return switch (bits) {
            case 0 -> new TimerMode(Way.NORMAL, MAX);
            case 1 -> new TimerMode(Way.CORRECT, MAX);
            case 2 -> new TimerMode(Way.CLEARED, OCRA);
            case 3 -> new TimerMode(Way.FAST, MAX);
            case 5 -> new TimerMode(Way.CORRECT, OCRA);
            case 7 -> new TimerMode(Way.FAST, OCRA);
            default -> new TimerMode(Way.NORMAL, MAX);
        };
    }

    private static TimerMode wide(int bits) {
        return switch (bits) {
            case 1, 2, 3 -> new TimerMode(Way.CORRECT, (0x80 << bits) - 1);
            case 4 -> new TimerMode(Way.CLEARED, OCRA);
            case 5, 6, 7 -> new TimerMode(Way.FAST, (0x80 << bits - 4) - 1);
            case 8 -> new TimerMode(Way.CORRECT_FREQUENCY, ICR);
            case 9 -> new TimerMode(Way.CORRECT_FREQUENCY, OCRA);
            case 10 -> new TimerMode(Way.CORRECT, ICR);
            case 11 -> new TimerMode(Way.CORRECT, OCRA);
            case 12 -> new TimerMode(Way.CLEARED, ICR);
            case 14 -> new TimerMode(Way.FAST, ICR);
            case 15 -> new TimerMode(Way.FAST, OCRA);
            default -> new TimerMode(Way.NORMAL, MAX);
        };
    }

    int top(int max, int compareA, int capture) {
        return topKind == MAX ? max : topKind == OCRA ? compareA : topKind == ICR ? capture : topKind;
    }

    /** Whether it counts up and down again. */
    boolean isDual() {
        return way == Way.CORRECT || way == Way.CORRECT_FREQUENCY;
    }

    boolean isPwm() {
        return way == Way.FAST || isDual();
    }

    /** Whether new values to compare with wait for their turn. */
    boolean isBuffered() {
        return isPwm();
    }

    boolean isBufferedToTop() {
        return way == Way.CORRECT;
    }

    boolean overflowsAtTop() {
        return way == Way.FAST;
    }

    /** Whether output A may toggle. */
    boolean togglesA() {
        return topKind == OCRA;
    }
}
