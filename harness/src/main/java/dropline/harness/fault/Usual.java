package dropline.harness.fault;

import dropline.bus.clock.UartClock;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Segment;

/** What a fault's amount and rate are where a person leaves them out. */
final class Usual {
    private static final long MILLI = 1_000_000L;

    private Usual() {}

    /** The amount, as {@link FaultKind.Unit} counts it; 0 for a kind without one. */
    static long amount(FaultKind kind, Struck struck, Pit pit, Layout layout) {
        return switch (kind) {
            case DRIVER_ENABLED_LATE -> bits(struck.segment(pit), 15);
            case DRIVER_ENABLED_EARLY -> bits(struck.segment(pit), 600);
            case DRIVER_RELEASED_LATE -> gap(struck.segment(pit)) + bits(struck.segment(pit), 120);
            case DRIVER_RELEASED_EARLY -> bits(struck.segment(pit), 95);
            case BLACKOUT -> chars(struck.segment(pit), 40);
            case LOOP_STALL -> 200 * MILLI;
            case NOISE_BURST -> 2 * MILLI;
            case SLOW_ADAPTER -> 16 * MILLI;
            case BABBLING_NODE -> 10;
            case RING_OVERRUN ->
                Math.max(1, Math.min(16, struck.node(layout).profile().ringChars() / 2));
            case CLOCK_OFF -> 60_000;
            case WRONG_BAUD -> otherBaud(struck.segment(pit).baud());
            case NEEDLE_SLIPPED, LOST_ZERO -> share(struck, pit, layout, 10);
            case STICKING_NEEDLE -> share(struck, pit, layout, 2);
            case LOST_STEPS -> share(struck, pit, layout, 1);
            default -> 0;
        };
    }

    /** The rate, as {@link FaultKind.Timing} counts it; 0 for none. */
    static double rate(FaultKind kind) {
        return switch (kind) {
            case BABBLING_NODE -> 50;
            case NOISY_AXIS -> 20;
            case SWITCH_FLICKERS -> 2;
            case LOST_STATE_FRAME -> 0.1;
            case COMMON_WIRE_LIFTED, ENCODER_SKIPS -> 0.3;
            default -> kind.timing() == FaultKind.Timing.CHANCE ? 1 : 0;
        };
    }

    /** The usual amount in words; empty for a kind without one. */
    static String amountWords(FaultKind kind) {
        return switch (kind) {
            case RESET -> "the node's own boot time";
            case BROWN_OUT -> "each node's own boot time";
            case REPLY_TOO_SOON -> "0 us: at once";
            case DRIVER_ENABLED_LATE -> "1.5 bit times";
            case DRIVER_ENABLED_EARLY -> "60 bit times";
            case DRIVER_RELEASED_LATE -> "the controller's gap and 12 bit times";
            case DRIVER_RELEASED_EARLY -> "9.5 bit times";
            case BLACKOUT -> "40 character times";
            case LOOP_STALL -> "200 ms";
            case NOISE_BURST -> "2 ms";
            case SLOW_ADAPTER -> "16 ms";
            case BABBLING_NODE -> "10 characters";
            case RING_OVERRUN -> "16 characters, or half of a ring that holds fewer than 32";
            case CLOCK_OFF -> "60000 ppm";
            case WRONG_BAUD -> "half the segment's baud rate, or twice where that is below 300 baud";
            case NEEDLE_SLIPPED, LOST_ZERO -> "10 % of the signal's range";
            case STICKING_NEEDLE -> "2 % of the signal's range";
            case LOST_STEPS -> "1 % of the signal's range";
            default -> "";
        };
    }

    /** The usual rate in words. */
    static String rateWords(FaultKind kind) {
        double rate = Usual.rate(kind);
        return switch (kind.timing()) {
            case STEADY -> "all the time";
            case CHANCE -> Math.round(rate * 100) + " % of " + struckEachTime(kind);
            case EVENT -> rate == 0 ? "once" : Math.round(rate) + " times a second";
        };
    }

    private static String struckEachTime(FaultKind kind) {
        return switch (kind) {
            case LOST_STATE_FRAME -> "the state frames";
            case COMMON_WIRE_LIFTED -> "the frames it hears";
            case EAVESDROPPER -> "the others' replies";
            case ANSWERS_ANOTHER -> "the other's polls";
            case LOST_STEPS -> "its moves";
            case ENCODER_SKIPS -> "its steps or presses";
            default -> "its replies";
        };
    }

    /** Half the baud rate, or twice where a UART would be too slow for that. */
    private static int otherBaud(int baud) {
        return baud / 2 >= 300 ? baud / 2 : baud * 2;
    }

    private static long gap(Segment segment) {
        return Math.max(segment.controller().gapNanos(), segment.silenceNanos());
    }

    /** So many tenths of a bit at a segment's baud rate, ns. */
    static long bits(Segment segment, long tenths) {
        return UartClock.ticksToNanos(tenths, 10L * segment.baud());
    }

    private static long chars(Segment segment, int count) {
        return UartClock.exact(segment.baud()).charsNanos(segment.format(), count);
    }

    private static long share(Struck struck, Pit pit, Layout layout, int percent) {
        return Math.max(1, Math.round(struck.signal(pit, layout).steps() * percent / 100.0));
    }
}
