package dropline.harness.bound;

import static dropline.harness.bound.RandomParts.MILLI;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Control;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;

/**
 * Changes and moves for a pit, drawn: now a few signals at a time, now all at once. A control moves again only after
 * its node believes the last move.
 */
final class RandomFlight {
    private final Pit pit;
    private final Layout layout;
    private final Dice dice;
    private final long gapNanos;
    private final long meanMoreNanos;
    private final long[] values;
    private final long[] restingNanos;
    private final int[] positions;
    private long nextNanos = MILLI;

    /** @param gapNanos from one row to the next, at least */
    RandomFlight(Pit pit, Layout layout, long seed, long gapNanos) {
        this.gapNanos = gapNanos;
        this.pit = pit;
        this.layout = layout;
        dice = new Dice(seed);
        meanMoreNanos = dice.between(0, 50 * MILLI);
        values = new long[pit.signals().size()];
        restingNanos = new long[layout.controls().size()];
        positions = new int[layout.controls().size()];
    }

    /** The next stretch. */
    void fill(StateBlock block, long untilNanos) {
        block.clear();
        while (nextNanos < untilNanos) {
            block.addRow(nextNanos);
            boolean all = dice.oneIn(6);
            for (int signal = 0; signal < values.length; signal++) {
                if (all || dice.oneIn(1 + values.length / 2)) {
                    change(block, signal);
                }
            }
            if (positions.length > 0) {
                move(block, dice.below(positions.length));
            }
            nextNanos += Math.max(MILLI / 4, gapNanos) + (long) (dice.next() * 2 * meanMoreNanos);
        }
    }

    private void change(StateBlock block, int signal) {
        Signal described = pit.signals().get(signal);
        long steps = described.steps();
        values[signal] = (values[signal] + 1 + dice.below((int) steps)) % (steps + 1);
        block.addChange(signal, values[signal]);
    }

    private void move(StateBlock block, int index) {
        Control control = layout.controls().get(index).control();
        if (nextNanos < restingNanos[index]) {
            return;
        }
        restingNanos[index] = nextNanos + control.longestBelievingNanos() + 1;
        positions[index] = switch (control.kind()) {
            case ENCODER, AXIS -> positions[index] + 1;
            case LEVER -> 2 - positions[index];
            case SELECTOR, THREE_WAY_TOGGLE -> (positions[index] + 1) % 3;
            default -> 1 - positions[index];
        };
        block.addMove(nextNanos, index, positions[index]);
    }
}
