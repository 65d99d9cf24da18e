package dropline.harness.size;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.recording.StateFeed;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.util.List;
import java.util.OptionalLong;

/**
 * A stretch of what is played, held in memory to be played again and again. What stands at its first instant is sent at
 * once; then comes a pause in which the bus settles, so that the burst of a cold start does not count as the stretch's
 * own.
 */
public final class Tape {
    /** How long the bus has to show what stands at the beginning, ns. */
    static final long SETTLE_NANOS = 3_000_000_000L;

    private static final long READ_NANOS = 1_000_000_000L;

    private final StateBlock all = new StateBlock();
    private long endNanos;

    private Tape() {}

    /** Reads a stretch to its end, keeping what concerns one segment of the pit, and those that run with it. */
    static Tape of(Source.Opening stretch, Pit pit, int segment) throws IOException {
        return of(stretch, pit, pit.runsWith(segment));
    }

    /** Reads a stretch to its end, keeping what concerns these segments of the pit. */
    public static Tape of(Source.Opening stretch, Pit pit, List<Integer> segments) throws IOException {
        Tape tape = new Tape();
        boolean[] signals = signals(pit, segments);
        boolean[] controls = controls(pit, segments);
        try (Source source = stretch.open()) {
            StateBlock read = new StateBlock();
            boolean more = true;
            for (long until = READ_NANOS; more; until += READ_NANOS) {
                long end = Math.min(until, source.endNanos());
                more = source.feed().fill(read, end) && end < source.endNanos();
                tape.take(read, signals, controls);
            }
            tape.endNanos = later(source.endNanos() == Long.MAX_VALUE ? source.reachedNanos() + 1 : source.endNanos());
        }
        return tape;
    }

    private static long later(long nanos) {
        return nanos == 0 ? 0 : nanos + SETTLE_NANOS;
    }

    /** Which of the pit's signals any of these segments shows. */
    static boolean[] signals(Pit pit, List<Integer> segments) {
        boolean[] wanted = new boolean[pit.signals().size()];
        for (Layout.Slot slot : Layout.of(pit).slots()) {
            wanted[slot.signal()] |= segments.contains(slot.segment());
        }
        return wanted;
    }

    private static boolean[] controls(Pit pit, List<Integer> segments) {
        List<Layout.ControlPlace> places = Layout.of(pit).controls();
        boolean[] wanted = new boolean[places.size()];
        for (int i = 0; i < wanted.length; i++) {
            wanted[i] = segments.contains(places.get(i).segment());
        }
        return wanted;
    }

    private void take(StateBlock read, boolean[] signals, boolean[] controls) {
        for (int row = 0; row < read.rows(); row++) {
            all.addRow(later(read.rowNanos(row)));
            for (int i = read.firstChange(row); i < read.endChange(row); i++) {
                if (signals[read.signal(i)]) {
                    all.addChange(read.signal(i), read.value(i));
                }
            }
        }
        for (int move = 0; move < read.moves(); move++) {
            if (controls[read.moveControl(move)]) {
                all.addMove(later(read.moveNanos(move)), read.moveControl(move), read.moveValue(move));
            }
        }
    }

    /** Opens it from its beginning; any number may be open at once. */
    public Source open() {
        Feed feed = new Feed();
        return new Source() {
            @Override
            public StateFeed feed() {
                return feed;
            }

            @Override
            public long endNanos() {
                return endNanos;
            }

            @Override
            public OptionalLong mostNanos() {
                return OptionalLong.of(endNanos);
            }

            @Override
            public long reachedNanos() {
                return endNanos;
            }

            @Override
            public double share() {
                return 0;
            }

            @Override
            public List<String> losses() {
                return List.of();
            }
        };
    }

    private final class Feed implements StateFeed {
        private int row;
        private int move;

        @Override
        public boolean fill(StateBlock block, long untilNanos) {
            block.clear();
            while (row < all.rows() && all.rowNanos(row) < untilNanos) {
                block.addRow(all.rowNanos(row));
                for (int i = all.firstChange(row); i < all.endChange(row); i++) {
                    block.addChange(all.signal(i), all.value(i));
                }
                row++;
            }
            while (move < all.moves() && all.moveNanos(move) < untilNanos) {
                block.addMove(all.moveNanos(move), all.moveControl(move), all.moveValue(move));
                move++;
            }
            return true;
        }

        @Override
        public void close() {
            // nothing is held open
        }
    }
}
