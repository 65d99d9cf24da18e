package dropline.bus.fault;

import dropline.bus.pit.Control;
import dropline.bus.pit.Indicator;
import java.util.Locale;

/**
 * Every way in which a pit goes wrong that a run can simulate. Terminators are a matter of the copper rules and stand
 * there.
 */
public enum FaultKind {
    /** Hears nothing, says nothing: unplugged, or without supply. */
    DEAD_NODE(Strikes.NODE, Timing.STEADY, Unit.NONE),
    /** Restarts: silent for its boot time (or the amount), then shows nothing it knew until it is sent again. */
    RESET(Strikes.NODE, Timing.EVENT, Unit.TIME),
    /** Enables its driver this long after its first start bit began. */
    DRIVER_ENABLED_LATE(Strikes.NODE, Timing.CHANCE, Unit.TIME),
    /** Enables its driver this much too early, while the request may still be on the pair. */
    DRIVER_ENABLED_EARLY(Strikes.NODE, Timing.CHANCE, Unit.TIME),
    /** Holds the pair this long after its last stop bit. */
    DRIVER_RELEASED_LATE(Strikes.NODE, Timing.CHANCE, Unit.TIME),
    /** Lets go this long before the end of its last stop bit. */
    DRIVER_RELEASED_EARLY(Strikes.NODE, Timing.CHANCE, Unit.TIME),
    /** Answers this long after the request's last character is in: before the controller has let go. */
    REPLY_TOO_SOON(Strikes.NODE, Timing.CHANCE, Unit.TIME),
    /** Has another node's address instead of its own: both answer to it. */
    DUPLICATE_ADDRESS(Strikes.NODE_AND_OTHER, Timing.STEADY, Unit.NONE),
    /** Its driver stays enabled and idle. */
    STUCK_DRIVER(Strikes.NODE, Timing.STEADY, Unit.NONE),
    /** Sends this many characters of its own accord. */
    BABBLING_NODE(Strikes.NODE, Timing.EVENT, Unit.CHARACTERS),
    /** Answers polls for another node beside its own. */
    ANSWERS_ANOTHER(Strikes.NODE_AND_OTHER, Timing.CHANCE, Unit.NONE),
    /** Takes another node's reply for its own business and misses the request that follows. */
    EAVESDROPPER(Strikes.NODE, Timing.CHANCE, Unit.NONE),
    /** Its UART is set to this baud rate. */
    WRONG_BAUD(Strikes.NODE, Timing.STEADY, Unit.BAUD),
    /** Its clock runs fast (or, below 0, slow) by this many parts in a million. */
    CLOCK_OFF(Strikes.NODE, Timing.STEADY, Unit.PARTS_PER_MILLION),
    /** Its interrupts are off for this long. */
    BLACKOUT(Strikes.NODE, Timing.EVENT, Unit.TIME),
    /** Its receive ring holds only this many characters of a frame. */
    RING_OVERRUN(Strikes.NODE, Timing.STEADY, Unit.CHARACTERS),
    /** Its main loop stands still for this long. */
    LOOP_STALL(Strikes.NODE, Timing.EVENT, Unit.TIME),
    /** Nothing holds the idle pair: receivers see noise. */
    MISSING_BIAS(Strikes.SEGMENT, Timing.STEADY, Unit.NONE),
    /** Its receiver's output floats while it sends: it hears noise then. */
    FLOATING_RECEIVER(Strikes.NODE, Timing.STEADY, Unit.NONE),
    /** The controller hears what it sends. */
    ECHO(Strikes.SEGMENT, Timing.STEADY, Unit.NONE),
    /** Noise on the pair for this long. */
    NOISE_BURST(Strikes.SEGMENT, Timing.EVENT, Unit.TIME),
    /** Its two wires are exchanged: it hears and says everything upside down. */
    SWAPPED_PAIR(Strikes.NODE, Timing.STEADY, Unit.NONE),
    /** Shows what it last showed, while its node answers. */
    FROZEN_DISPLAY(Strikes.INDICATOR, Timing.STEADY, Unit.NONE),
    /** The USB adapter flushes only at this period. */
    SLOW_ADAPTER(Strikes.SEGMENT, Timing.STEADY, Unit.TIME),
    /** A state frame goes out damaged: nobody has it. */
    LOST_STATE_FRAME(Strikes.SEGMENT, Timing.CHANCE, Unit.NONE),
    /** The host sends no state. */
    SILENT_HOST(Strikes.HOST, Timing.STEADY, Unit.NONE),
    /** The supply of a segment's nodes dips: all of them restart. */
    BROWN_OUT(Strikes.SEGMENT, Timing.EVENT, Unit.TIME),
    /**
     * Fed through its signal or USB leads it never starts properly: hangs, silent, until its supply is off for good.
     */
    BACK_FEED(Strikes.NODE, Timing.STEADY, Unit.NONE),
    /** Return current lifts its common wire: its receiver is wrong now and then. */
    COMMON_WIRE_LIFTED(Strikes.NODE, Timing.CHANCE, Unit.NONE),
    /** Loses this many units of the signal's resolution in a move. */
    LOST_STEPS(Strikes.INDICATOR, Timing.CHANCE, Unit.STEPS),
    /** Took its zero in the wrong place: off by this many units of the resolution from the start. */
    LOST_ZERO(Strikes.INDICATOR, Timing.STEADY, Unit.STEPS),
    /** Its needle slipped on the shaft by this many units of the resolution. */
    NEEDLE_SLIPPED(Strikes.INDICATOR, Timing.EVENT, Unit.STEPS),
    /** Stops this many units of the resolution short, from whichever side it comes. */
    STICKING_NEEDLE(Strikes.INDICATOR, Timing.STEADY, Unit.STEPS),
    /** A step or press of it is not noticed. */
    ENCODER_SKIPS(Strikes.CONTROL, Timing.CHANCE, Unit.NONE),
    /** Its contact opens and closes by itself. */
    SWITCH_FLICKERS(Strikes.CONTROL, Timing.EVENT, Unit.NONE),
    /** Its reading wanders beyond the dead band by itself. */
    NOISY_AXIS(Strikes.CONTROL, Timing.EVENT, Unit.NONE);

    /** What a fault strikes. */
    public enum Strikes {
        NODE,
        /** A node, and another one whose address it answers to. */
        NODE_AND_OTHER,
        SEGMENT,
        INDICATOR,
        CONTROL,
        HOST
    }

    /** When it strikes within its span, and what its rate means. */
    public enum Timing {
        /** All the time; no rate. */
        STEADY,
        /** Each frame, poll or move is struck with this probability, above 0 up to 1; 1 unless said. */
        CHANCE,
        /** Once, at the begin of its span; or, with a rate, so many times a second at random instants. */
        EVENT
    }

    /** What the amount of a fault counts. */
    public enum Unit {
        NONE,
        /** ns */
        TIME,
        BAUD,
        PARTS_PER_MILLION,
        CHARACTERS,
        /** Units of the signal's resolution. */
        STEPS
    }

    private final Strikes strikes;
    private final Timing timing;
    private final Unit unit;

    FaultKind(Strikes strikes, Timing timing, Unit unit) {
        this.strikes = strikes;
        this.timing = timing;
        this.unit = unit;
    }

    public Strikes strikes() {
        return strikes;
    }

    public Timing timing() {
        return timing;
    }

    public Unit unit() {
        return unit;
    }

    /** Whether it is a matter of a shared pair and of the drivers on it: a board straight on USB cannot have it. */
    public boolean needsPair() {
        return switch (this) {
            case DRIVER_ENABLED_LATE,
                    DRIVER_ENABLED_EARLY,
                    DRIVER_RELEASED_LATE,
                    DRIVER_RELEASED_EARLY,
                    REPLY_TOO_SOON,
                    STUCK_DRIVER,
                    MISSING_BIAS,
                    FLOATING_RECEIVER,
                    ECHO,
                    SWAPPED_PAIR,
                    COMMON_WIRE_LIFTED -> true;
            default -> false;
        };
    }

    /**
     * Whether it is in a node's program, or shows only through it, so that a node whose own program is run has it or
     * has it not.
     */
    public boolean isOfProgram() {
        return switch (this) {
            case DRIVER_ENABLED_LATE,
                    DRIVER_ENABLED_EARLY,
                    DRIVER_RELEASED_LATE,
                    DRIVER_RELEASED_EARLY,
                    REPLY_TOO_SOON,
                    DUPLICATE_ADDRESS,
                    ANSWERS_ANOTHER,
                    EAVESDROPPER,
                    WRONG_BAUD,
                    CLOCK_OFF,
                    BLACKOUT,
                    RING_OVERRUN,
                    LOOP_STALL,
                    FLOATING_RECEIVER,
                    COMMON_WIRE_LIFTED,
                    ENCODER_SKIPS,
                    SWITCH_FLICKERS,
                    NOISY_AXIS -> true;
            default -> false;
        };
    }

    /** Whether an indicator of this kind can have it: only what moves has a needle. */
    public boolean canStrike(Indicator.Kind indicator) {
        return this == FROZEN_DISPLAY || (strikes == Strikes.INDICATOR && indicator.moves());
    }

    /** Whether a control of this kind can have it. */
    public boolean canStrike(Control.Kind control) {
        return switch (this) {
            case SWITCH_FLICKERS -> control.isContact();
            case ENCODER_SKIPS -> control.counts();
            case NOISY_AXIS -> control == Control.Kind.AXIS || control == Control.Kind.LEVER;
            default -> false;
        };
    }

    /** As written on a command line: {@code dead-node}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
