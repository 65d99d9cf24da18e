package dropline.harness.finding;

import static dropline.harness.finding.RandomPit.MILLI;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Control;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;

/** A few seconds of changing state and moved controls, drawn from a seed; handed over stretch by stretch. */
final class RandomFlight {
    static final long STRETCH_NANOS = 100 * MILLI;
    private static final long ROW_NANOS = 20 * MILLI;

    private final Pit pit;
    private final Random random;
    private final long[] values;
    private final long[] nextChange;
    private final boolean[] lamp;
    private final boolean[] wraps;
    private final List<Move> moves = new ArrayList<>();
    private int move;

    private record Move(long at, int control, int value) {}

    RandomFlight(Pit pit, Layout layout, long seed, long endNanos) {
        this.pit = pit;
        random = new Random(seed);
        int count = pit.signals().size();
        values = new long[count];
        nextChange = new long[count];
        lamp = new boolean[count];
        wraps = new boolean[count];
        for (int i = 0; i < count; i++) {
            lamp[i] = pit.signals().get(i).steps() == 1;
            wraps[i] = pit.signals().get(i).wraps();
            values[i] = lamp[i] ? 0 : 300 + random.nextInt(400);
        }
        for (int i = 0; i < layout.controls().size(); i++) {
            person(i, layout.controls().get(i).control().kind(), endNanos);
        }
        moves.sort(Comparator.comparingLong(Move::at));
    }

    private void person(int control, Control.Kind kind, long endNanos) {
        int value = 0;
        long at = (100 + random.nextInt(400)) * MILLI;
        while (at < endNanos) {
            switch (kind) {
                case TOGGLE -> moves.add(new Move(at, control, value ^= 1));
                case BUTTON -> {
                    moves.add(new Move(at, control, 1));
                    moves.add(new Move(at + 90 * MILLI, control, 0));
                }
                case ENCODER -> {
                    for (int i = 0; i < 5; i++) {
                        moves.add(new Move(at + i * 30L * MILLI, control, ++value & 0xFFFF));
                    }
                }
                case SELECTOR -> moves.add(new Move(at, control, random.nextInt(6)));
                case THREE_WAY_TOGGLE -> moves.add(new Move(at, control, random.nextInt(3)));
                case HELD_TOGGLE, HELD_BUTTON -> {
                    moves.add(new Move(at, control, 1));
                    moves.add(new Move(at + 150 * MILLI, control, 0));
                }
                case KEY_MATRIX -> {
                    moves.add(new Move(at, control, 1 << random.nextInt(16)));
                    moves.add(new Move(at + 150 * MILLI, control, 0));
                }
                case AXIS, LEVER -> {
                    value = 100 + random.nextInt(800);
                    moves.add(new Move(at, control, value));
                }
            }
            at += (250 + random.nextInt(300)) * MILLI;
        }
    }

    /** The next stretch, from one multiple of {@link #STRETCH_NANOS} to the next. */
    void fill(StateBlock block, long fromNanos) {
        block.clear();
        for (long at = fromNanos; at < fromNanos + STRETCH_NANOS; at += ROW_NANOS) {
            block.addRow(at);
            for (int i = 0; i < values.length; i++) {
                if (at == 0) {
                    block.addChange(i, values[i]);
                    nextChange[i] = random.nextInt(400) * MILLI;
                } else if (at >= nextChange[i]) {
                    nextChange[i] = at + (100 + random.nextInt(400)) * MILLI;
                    long before = values[i];
                    values[i] = changed(i);
                    if (values[i] != before) {
                        block.addChange(i, values[i]);
                    }
                }
            }
        }
        while (move < moves.size() && moves.get(move).at() < fromNanos + STRETCH_NANOS) {
            Move next = moves.get(move++);
            block.addMove(next.at(), next.control(), next.value());
        }
    }

    private long changed(int signal) {
        if (lamp[signal]) {
            return 1 - values[signal];
        }
        long next = values[signal] + (random.nextBoolean() ? 1 : -1) * (20L + random.nextInt(60));
        return wraps[signal]
                ? Math.floorMod(next, pit.signals().get(signal).steps())
                : Math.max(100, Math.min(900, next));
    }
}
