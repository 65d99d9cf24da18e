package dropline.harness.pitfile;

import dropline.bus.pit.Motion.Zeroing;
import dropline.harness.pitfile.Words.Choices;
import java.util.List;

/** The keys of indicators that say how a motor moves and a filament glows. */
final class MotionKeys {
    static final Key<Integer> STEPS_PER_TURN = Key.optional(
                    "steps-per-turn", Numbers.whole(1, 10_000_000), "stepper: steps of one turn, gears included")
            .figure();
    static final Key<Rates.Amount> TURN =
            Key.optional("turn", Rates.way(), "stepper: what one turn is, in the unit of the signal; this or sweep");
    static final Key<Long> SWEEP = Key.optional(
                    "sweep",
                    Numbers.measure(Measure.angle(), 1_000, 360_000_000),
                    "gauge stepper, servo, stepper, drum counter (its fastest drum): the angle by which it turns for"
                            + " the signal's whole range; speeds, other than a stepper's, are then those of its"
                            + " shaft, in deg/s")
            .figure();
    static final Key<Rates.Amount> SLEW = Key.optional("slew", Rates.speed(), "stepper: greatest speed, in steps/s")
            .figure();
    static final Key<Rates.Amount> ACCELERATION = Key.optional(
                    "acceleration",
                    Rates.acceleration(),
                    "stepper (in steps/s2), gauge stepper (in the signal's unit): how fast it gains speed; at once"
                            + " where left out")
            .figure();
    static final Key<Zeroing> ZEROING = Key.standard(
            "zeroing",
            Words.choice(new Choices<Zeroing>()
                    .with("none", Zeroing.NONE)
                    .with("sensor", Zeroing.SENSOR)
                    .with("stop", Zeroing.STOP)),
            "none",
            "stepper, gauge stepper, drum counter: how it finds its zero, the signal's least value, after a restart:"
                    + " down to a sensor, or against a stop for as long as its whole range takes");
    static final Key<Rates.Amount> ZEROING_SPEED = Key.optional(
                    "zeroing-speed",
                    Rates.speed(),
                    "speed at which it finds its zero: stepper in steps/s, the others in the signal's unit")
            .figure();
    static final Key<Long> RISE = Key.optional(
                    "rise",
                    Times.time(Times.MICRO, 10 * Times.SECOND),
                    "filament lamp: from dark to its greatest brightness")
            .figure();
    static final Key<Long> FALL = Key.optional(
                    "fall", Times.time(Times.MICRO, 10 * Times.SECOND), "filament lamp: the other way")
            .figure();

    static final List<Key<?>> ALL =
            List.of(STEPS_PER_TURN, TURN, SWEEP, SLEW, ACCELERATION, ZEROING, ZEROING_SPEED, RISE, FALL);

    private MotionKeys() {}
}
