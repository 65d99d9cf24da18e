package dropline.bus.pit;

import java.util.List;

/**
 * Something a panel shows with.
 *
 * @param name unique on its panel
 * @param kind what it is
 * @param signals indices into {@link Pit#signals()} of what it shows
 * @param delayNanos lamp, backlight zone: time to switch; flag: time to turn by one position; what moves: time from
 *     command to first motion, ns
 * @param refreshEveryNanos refreshed kinds: from one refresh to the next; servo, backlight zone: its frame, ns; else 0
 * @param refreshTakesNanos refreshed kinds: how long a refresh takes, ns; else 0
 * @param blocks what a refresh keeps from running on its node
 * @param motion how it moves; {@link Motion#NONE} if it does not
 * @param glow how a filament glows and fades; {@link Glow#NONE} of everything else
 * @param draws what it takes, by what it does
 * @param dimming how a backlight zone's brightness follows its level
 */
public record Indicator(
        String name,
        Kind kind,
        List<Integer> signals,
        long delayNanos,
        long refreshEveryNanos,
        long refreshTakesNanos,
        Blocks blocks,
        Motion motion,
        Glow glow,
        Draws draws,
        Dimming dimming) {

    /** What an indicator is, and with that when it counts as showing a value. */
    public enum Kind {
        /** Shown when its output is switched. */
        LAMP(Shown.SWITCHED),
        /** Shown at the end of the refresh that contains the value. */
        DIGITS(Shown.REFRESHED),
        /** Shown at the end of the refresh that contains the value. */
        CHARACTER_LCD(Shown.REFRESHED),
        /** Shown at the end of the refresh that contains the value. */
        OLED(Shown.REFRESHED),
        /** Shown at first motion towards the value. */
        GAUGE_STEPPER(Shown.MOVING),
        /** Shown at first motion towards the value; commands take effect at its 50 Hz frame. */
        SERVO(Shown.MOVING),
        /** Shown when it has come to glow, or to fade, as bright as the value says. */
        FILAMENT_LAMP(Shown.REACHED),
        /** Shows one signal as a level, at the end of the refresh that contains it. */
        LED_BAR(Shown.REFRESHED),
        /** Shown when it has turned over. */
        FLAG(Shown.REACHED),
        /** Shown at the end of the refresh that contains the value. */
        VFD(Shown.REFRESHED),
        /** Shown at first motion towards the value. */
        DRUM_COUNTER(Shown.MOVING),
        /** A geared or free-running one; shown at first motion towards the value. */
        STEPPER(Shown.MOVING),
        /** Shown when its new brightness is switched, at the next period of its dimmer if that is given. */
        BACKLIGHT_ZONE(Shown.SWITCHED);

        private enum Shown {
            SWITCHED,
            REFRESHED,
            MOVING,
            REACHED
        }

        private final Shown shown;

        Kind(Shown shown) {
            this.shown = shown;
        }

        /** Whether it shows by refreshing. */
        public boolean refreshes() {
            return shown == Shown.REFRESHED;
        }

        /** Whether it shows by moving. */
        public boolean moves() {
            return shown == Shown.MOVING;
        }

        /** Whether it shows a value only once it has got there, and never one that is replaced on the way. */
        public boolean mustArrive() {
            return shown == Shown.REACHED;
        }

        /** Whether commands may have to wait for the next of its frames. */
        public boolean hasFrames() {
            return this == SERVO || this == BACKLIGHT_ZONE;
        }
    }

    /** What a refresh or task keeps from running. */
    public enum Blocks {
        NOTHING,
        LOOP,
        INTERRUPTS
    }

    /**
     * How long a filament takes from dark to its greatest brightness and back, ns; in between in proportion.
     *
     * @param riseNanos from the signal's least value to its greatest
     * @param fallNanos the other way
     */
    public record Glow(long riseNanos, long fallNanos) {
        /** Of what has no filament. */
        public static final Glow NONE = new Glow(0, 0);

        public Glow {
            if (riseNanos < 0 || fallNanos < 0) {
                throw new IllegalArgumentException(
                        "times must not be negative: rise=" + riseNanos + " fall=" + fallNanos);
            }
        }
    }

    /** One of whose current nothing is said. */
    public Indicator(
            String name,
            Kind kind,
            List<Integer> signals,
            long delayNanos,
            long refreshEveryNanos,
            long refreshTakesNanos,
            Blocks blocks,
            Motion motion,
            Glow glow) {
        this(
                name,
                kind,
                signals,
                delayNanos,
                refreshEveryNanos,
                refreshTakesNanos,
                blocks,
                motion,
                glow,
                Draws.UNKNOWN,
                Dimming.PLAIN);
    }

    /** One without a filament, and with no more to say of its motion than its speed. */
    public Indicator(
            String name,
            Kind kind,
            List<Integer> signals,
            long delayNanos,
            long refreshEveryNanos,
            long refreshTakesNanos,
            Blocks blocks,
            double ratePerSecond) {
        this(
                name,
                kind,
                signals,
                delayNanos,
                refreshEveryNanos,
                refreshTakesNanos,
                blocks,
                Motion.atOnce(ratePerSecond),
                Glow.NONE);
    }

    public Indicator {
        signals = List.copyOf(signals);
        if (signals.isEmpty()) {
            throw new IllegalArgumentException("an indicator must show at least one signal: name=" + name);
        }
        if (showsOne(kind) && signals.size() != 1) {
            throw new IllegalArgumentException(
                    "this kind of indicator shows one signal: kind=" + kind + " signals=" + signals.size());
        }
        if (kind.moves() && !(motion.ratePerSecond() > 0)) {
            throw new IllegalArgumentException(
                    "a moving indicator needs a speed above 0: rate=" + motion.ratePerSecond());
        }
        if (kind.refreshes() && (refreshTakesNanos <= 0 || refreshEveryNanos < refreshTakesNanos)) {
            throw new IllegalArgumentException("a refresh must be over before the next: every=" + refreshEveryNanos
                    + " takes=" + refreshTakesNanos);
        }
        if (kind == Kind.SERVO && refreshEveryNanos <= 0) {
            throw new IllegalArgumentException("a servo needs a frame above 0: frame=" + refreshEveryNanos);
        }
    }

    /** Whether a kind has one pointer, level, filament or flag, and so one signal. */
    public static boolean showsOne(Kind kind) {
        return kind.moves() || kind.mustArrive() || kind == Kind.LED_BAR;
    }

    /** From a command to when it begins to be carried out, ns, without waiting for a refresh or frame. */
    public long startNanos() {
        return kind.refreshes() || kind.mustArrive() ? 0 : delayNanos;
    }

    /** Longest time from a command to its being shown, its node's refresh not being held up and its zero known, ns. */
    public long longestShowingNanos(Signal signal) {
        long refresh = kind.refreshes() ? 2 * refreshEveryNanos + refreshTakesNanos : refreshEveryNanos;
        long turning = kind == Kind.FLAG ? delayNanos * signal.steps() : Math.max(glow.riseNanos(), glow.fallNanos());
        return startNanos() + refresh + turning + motion.longestBrakingNanos();
    }
}
