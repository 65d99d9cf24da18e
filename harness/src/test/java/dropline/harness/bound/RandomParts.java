package dropline.harness.bound;

import static dropline.bus.pit.Indicator.Blocks.INTERRUPTS;
import static dropline.bus.pit.Indicator.Blocks.LOOP;
import static dropline.bus.pit.Indicator.Blocks.NOTHING;

import dropline.bus.chance.Distribution;
import dropline.bus.pit.Control;
import dropline.bus.pit.Control.Kind;
import dropline.bus.pit.Indicator;
import dropline.bus.pit.Indicator.Blocks;
import dropline.bus.pit.Motion;
import dropline.bus.pit.Profile;
import dropline.bus.pit.Profile.ReplyFrom;
import dropline.bus.pit.Signal;
import dropline.bus.pit.Transceiver;
import dropline.bus.pit.Transceiver.Driver;
import dropline.bus.pit.Transceiver.Receiver;
import java.util.ArrayList;
import java.util.List;

/** Firmware, indicators and controls, drawn; what blocks a node mostly does so for less than its buffers last. */
final class RandomParts {
    static final long MICRO = 1_000;
    static final long MILLI = 1_000_000;

    private final Dice dice;
    private final int baud;
    private final long charNanos;

    RandomParts(Dice dice, int baud, long charNanos) {
        this.dice = dice;
        this.baud = baud;
        this.charNanos = charNanos;
    }

    Profile profile() {
        Distribution gap =
                switch (dice.below(3)) {
                    case 0 -> Distribution.constant(dice.between(0, 2 * MILLI));
                    case 1 -> Distribution.uniform(100 * MICRO, 100 * MICRO + dice.between(0, 2 * MILLI));
                    default -> Distribution.exponential(50 * MICRO, 300 * MICRO, 2 * MILLI);
                };
        int parts = dice.oneIn(3) ? 978_000 + dice.below(44_000) : 1_000_000;
        Receiver receiver = dice.oneIn(40)
                ? Receiver.FLOATING_WHILE_SENDING
                : dice.of(List.of(Receiver.ALWAYS_ON, Receiver.OFF_WHILE_SENDING));
        return new Profile(
                dice.oneIn(2) ? ReplyFrom.LOOP : ReplyFrom.INTERRUPT,
                gap,
                dice.rarelyHuge(0, charNanos / 2),
                dice.between(0, charNanos / 2),
                dice.rarelyHuge(0, 2 * MILLI),
                2 + dice.below(2) * 14,
                63 + dice.below(2) * 192,
                tasks(),
                0,
                (long) baud * parts / 1000,
                1000,
                new Transceiver(dice.of(List.of(Driver.values())), receiver, dice.oneIn(3) ? 8 : 16));
    }

    private List<Profile.Task> tasks() {
        List<Profile.Task> tasks = new ArrayList<>();
        for (int t = dice.below(3); t > 0; t--) {
            Blocks blocks = dice.of(List.of(LOOP, LOOP, INTERRUPTS, NOTHING));
            long most = blocks == INTERRUPTS ? 2 * charNanos : 40 * charNanos;
            long takes = 1 + dice.between(0, dice.oneIn(20) ? 4 * most : most);
            tasks.add(new Profile.Task("task " + t, 4 * takes + dice.between(0, 50 * MILLI), takes, blocks));
        }
        return tasks;
    }

    /** @param period of the host's states, ns */
    Indicator indicator(String name, int signal, Signal shown, long period) {
        Indicator.Kind kind = dice.of(List.of(Indicator.Kind.values()));
        boolean refreshed = kind.refreshes();
        long takes = refreshed ? 1 + dice.between(0, 30 * charNanos) : 0;
        long every = refreshed
                ? 4 * takes + dice.between(0, 60 * MILLI)
                : kind == Indicator.Kind.SERVO || (kind.hasFrames() && dice.oneIn(2)) ? 20 * MILLI : 0;
        long reach = Math.max(MILLI, period) * (dice.oneIn(8) ? 2 : 1) / 2;
        long delay = dice.below(2) * dice.between(0, 10 * MILLI);
        if (kind == Indicator.Kind.FLAG) {
            delay = 1 + dice.between(0, reach / shown.steps());
        }
        boolean glows = kind == Indicator.Kind.FILAMENT_LAMP;
        double rate = (shown.max() - shown.min()) * 2;
        return new Indicator(
                name,
                kind,
                List.of(signal),
                glows ? 0 : delay,
                every,
                takes,
                refreshed ? dice.of(List.of(NOTHING, LOOP)) : NOTHING,
                kind.moves() ? new Motion(rate, dice.below(2) * rate * 20, 0, Motion.Zeroing.NONE, 0) : Motion.NONE,
                glows
                        ? new Indicator.Glow(1 + dice.between(0, reach), 1 + dice.between(0, reach))
                        : Indicator.Glow.NONE);
    }

    Control control(String name, int number) {
        Kind kind = dice.of(List.of(Kind.values()));
        boolean positions = kind == Kind.SELECTOR || kind == Kind.THREE_WAY_TOGGLE;
        return new Control(
                name,
                kind,
                number,
                kind.isContact() ? dice.between(0, 20 * MILLI) : 0,
                kind.isContact() ? dice.between(0, 5 * MILLI) : 0,
                0,
                positions ? new Control.Positions(3, dice.between(0, 30 * MILLI), 1) : Control.Positions.NONE,
                kind == Kind.KEY_MATRIX ? new Control.Matrix(4, 4, 10 * MILLI, true) : null,
                kind == Kind.LEVER ? List.of(new Control.Detent("low", 0), new Control.Detent("high", 2)) : List.of());
    }
}
