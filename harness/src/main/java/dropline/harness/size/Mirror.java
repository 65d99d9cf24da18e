package dropline.harness.size;

import dropline.bus.host.StateBlock;
import dropline.bus.pit.Layout;
import dropline.harness.recording.StateFeed;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * Plays to a grown pit what is played to the pit it grew from: whatever changes a signal or moves a control does the
 * same to its copies at the same instant.
 */
public final class Mirror {
    private final int[][] signals;
    private final int[][] controls;

    /**
     * @param signals for every signal of the original, itself and its copies as the grown pit numbers them
     * @param controls likewise for controls
     */
    Mirror(List<List<Integer>> signals, List<List<Integer>> controls) {
        this.signals = arrays(signals);
        this.controls = arrays(controls);
    }

    /** From one layout to another that lacks some controls; signals are the same. */
    public static Mirror between(Layout from, Layout to, int signals) {
        List<List<Integer>> same = new ArrayList<>();
        for (int signal = 0; signal < signals; signal++) {
            same.add(List.of(signal));
        }
        List<String> there =
                to.controls().stream().map(place -> place.control().name()).toList();
        List<List<Integer>> moved = new ArrayList<>();
        for (Layout.ControlPlace place : from.controls()) {
            int index = there.indexOf(place.control().name());
            moved.add(index < 0 ? List.of() : List.of(index));
        }
        return new Mirror(same, moved);
    }

    private static int[][] arrays(List<List<Integer>> lists) {
        return lists.stream()
                .map(list -> list.stream().mapToInt(Integer::intValue).toArray())
                .toArray(int[][]::new);
    }

    /** The original's source as the grown pit sees it; closing one closes the other. */
    public Source over(Source original) {
        Feed feed = new Feed(original.feed());
        return new Source() {
            @Override
            public StateFeed feed() {
                return feed;
            }

            @Override
            public long endNanos() {
                return original.endNanos();
            }

            @Override
            public OptionalLong mostNanos() throws IOException {
                return original.mostNanos();
            }

            @Override
            public long reachedNanos() {
                return original.reachedNanos();
            }

            @Override
            public double share() {
                return original.share();
            }

            @Override
            public List<String> losses() {
                return original.losses();
            }
        };
    }

    private final class Feed implements StateFeed {
        private final StateFeed original;
        private final StateBlock read = new StateBlock();

        Feed(StateFeed original) {
            this.original = original;
        }

        @Override
        public boolean fill(StateBlock block, long untilNanos) throws IOException {
            boolean more = original.fill(read, untilNanos);
            block.clear();
            for (int row = 0; row < read.rows(); row++) {
                block.addRow(read.rowNanos(row));
                for (int i = read.firstChange(row); i < read.endChange(row); i++) {
                    for (int signal : signals[read.signal(i)]) {
                        block.addChange(signal, read.value(i));
                    }
                }
            }
            for (int move = 0; move < read.moves(); move++) {
                for (int control : controls[read.moveControl(move)]) {
                    block.addMove(read.moveNanos(move), control, read.moveValue(move));
                }
            }
            return more;
        }

        @Override
        public void close() throws IOException {
            original.close();
        }
    }
}
