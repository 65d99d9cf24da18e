package dropline.bus.pit;

import java.util.List;

/**
 * Something a panel shows with.
 *
 * @param name unique on its panel
 * @param kind what it is
 * @param signals indices into {@link Pit#signals()} of what it shows
 * @param delayNanos lamp: time to switch; stepper, servo: time from command to first motion, ns
 * @param refreshEveryNanos refreshed kinds: from one refresh to the next; servo: its frame, ns; else 0
 * @param refreshTakesNanos refreshed kinds: how long a refresh takes, ns; else 0
 * @param blocks what a refresh keeps from running on its node
 * @param ratePerSecond stepper, servo: greatest speed in the signal's unit per second; else 0
 */
public record Indicator(
        String name,
        Kind kind,
        List<Integer> signals,
        long delayNanos,
        long refreshEveryNanos,
        long refreshTakesNanos,
        Blocks blocks,
        double ratePerSecond) {

    /** What an indicator is, and with that when it counts as showing a value. */
    public enum Kind {
        /** Shown when its output is switched. */
        LAMP,
        /** Shown at the end of the refresh that contains the value. */
        DIGITS,
        /** Shown at the end of the refresh that contains the value. */
        CHARACTER_LCD,
        /** Shown at the end of the refresh that contains the value. */
        OLED,
        /** Shown at first motion towards the value. */
        GAUGE_STEPPER,
        /** Shown at first motion towards the value; commands take effect at its 50 Hz frame. */
        SERVO;

        /** Whether it shows by refreshing. */
        public boolean refreshes() {
            return this == DIGITS || this == CHARACTER_LCD || this == OLED;
        }

        /** Whether it shows by moving. */
        public boolean moves() {
            return this == GAUGE_STEPPER || this == SERVO;
        }
    }

    /** What a refresh or task keeps from running. */
    public enum Blocks {
        NOTHING,
        LOOP,
        INTERRUPTS
    }

    public Indicator {
        signals = List.copyOf(signals);
        if (signals.isEmpty()) {
            throw new IllegalArgumentException("an indicator must show at least one signal: name=" + name);
        }
        if (kind.moves() && signals.size() != 1) {
            throw new IllegalArgumentException("a moving indicator shows one signal: signals=" + signals.size());
        }
        if (kind.moves() && !(ratePerSecond > 0)) {
            throw new IllegalArgumentException("a moving indicator needs a speed above 0: rate=" + ratePerSecond);
        }
        if (kind.refreshes() && (refreshTakesNanos <= 0 || refreshEveryNanos < refreshTakesNanos)) {
            throw new IllegalArgumentException("a refresh must be over before the next: every=" + refreshEveryNanos
                    + " takes=" + refreshTakesNanos);
        }
        if (kind == Kind.SERVO && refreshEveryNanos <= 0) {
            throw new IllegalArgumentException("a servo needs a frame above 0: frame=" + refreshEveryNanos);
        }
    }
}
