package dropline.harness.power;

import dropline.bus.fault.Fault;
import dropline.bus.fault.FaultKind;
import dropline.bus.pit.Indicator.Kind;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.bus.pit.Signal;
import dropline.bus.run.SegmentRun;
import dropline.harness.replay.Progress;
import dropline.harness.replay.WatchedRun;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The part of a power-up that is simulated: from the computer's start, when it sends its first state, in which every
 * signal is in the middle of its range and whatever has two values only is at the lower.
 */
final class StartRun {
    /** How long it is followed, beside the longest way of a needle, ns. */
    private static final long WATCHED_NANOS = 30_000_000_000L;

    private static final long FIRST_STATE_NANOS = 10_000_000L;
    private static final long NEVER = -1;

    private final Pit pit;
    private final Layout layout;
    private final long[] heard;
    private final long[] shown;

    private StartRun(Pit pit) {
        this.pit = pit;
        layout = Layout.of(pit);
        heard = new long[layout.nodes().size()];
        shown = new long[layout.slots().size()];
        Arrays.fill(heard, NEVER);
        Arrays.fill(shown, NEVER);
    }

    /**
     * What came of it, ns from the computer's start.
     *
     * @param heardNanos when the last board had answered, so that its switches were known
     * @param silent how many never did
     * @param shownNanos when the last place showed what it should
     * @param unshown how many never did
     * @param zoneLagNanos from the first backlight zone to show its level to the last; 0 where there are not two
     * @param currents on the way
     */
    record Started(long heardNanos, int silent, long shownNanos, int unshown, long zoneLagNanos, Flight currents) {}

    /** @param sinceNanos how long the supplies had been on: boards that need longer to boot are still at it */
    static Started of(Pit pit, long sinceNanos, long seed, int threads) throws IOException {
        return new StartRun(pit).run(sinceNanos, seed, threads);
    }

    private Started run(long sinceNanos, long seed, int threads) throws IOException {
        List<Fault> booting = new ArrayList<>();
        long longest = 0;
        for (int n = 0; n < heard.length; n++) {
            Layout.NodePlace place = layout.nodes().get(n);
            long left = place.node().profile().bootNanos() - sinceNanos;
            if (left > 0) {
                longest = Math.max(longest, left);
                booting.add(new Fault(FaultKind.RESET, place.segment(), n, -1, -1, 0, Fault.TO_THE_END, 0, left));
            }
        }
        Currents currents = new Currents(pit);
        List<Watch> watches = currents.watches().stream().map(Watch::new).toList();
        long end = WATCHED_NANOS + longest + longestWay();
        WatchedRun.Ran ran = new WatchedRun(
                        pit, () -> new FirstState(pit, FIRST_STATE_NANOS, end), seed, booting, threads)
                .run(watches, currents, Progress.NONE);
        return new Started(
                Arrays.stream(heard).max().orElse(0),
                (int) Arrays.stream(heard).filter(at -> at == NEVER).count(),
                Arrays.stream(shown).max().orElse(0),
                (int) Arrays.stream(shown).filter(at -> at == NEVER).count(),
                zoneLag(),
                currents.ended("", ran.durationNanos(), List.of()));
    }

    private long longestWay() {
        double longest = 0;
        for (Layout.Slot slot : layout.slots()) {
            Signal signal = pit.signals().get(slot.signal());
            double speed = slot.indicator().motion().ratePerSecond();
            double range = signal.max() - signal.min();
            longest = Math.max(longest, speed > 0 ? range / speed * 1e9 : 0);
            longest = Math.max(longest, slot.indicator().motion().longestZeroingNanos(signal));
        }
        return (long) Math.ceil(2 * longest);
    }

    private long zoneLag() {
        long first = Long.MAX_VALUE;
        long last = 0;
        for (int slot = 0; slot < shown.length; slot++) {
            if (layout.slots().get(slot).indicator().kind() == Kind.BACKLIGHT_ZONE && shown[slot] != NEVER) {
                first = Math.min(first, shown[slot]);
                last = Math.max(last, shown[slot]);
            }
        }
        return Math.max(0, last - first);
    }

    /** One segment's: notes first answers, and when each place last came to show something. */
    private final class Watch implements WatchedRun.Watcher {
        private final CurrentWatch currents;

        Watch(CurrentWatch currents) {
            this.currents = currents;
        }

        @Override
        public void follow(SegmentRun run) {
            currents.follow(run);
        }

        @Override
        public void stateChanged(long atNanos, int signal, int serial, long value) {
            currents.stateChanged(atNanos, signal, serial, value);
        }

        @Override
        public void answered(long atNanos, int node, int transaction, int attempt, long gapNanos) {
            if (heard[node] == NEVER) {
                heard[node] = atNanos;
            }
        }

        @Override
        public void applied(long atNanos, int slot, int serial, long heardNanos) {
            currents.applied(atNanos, slot, serial, heardNanos);
        }

        @Override
        public void shown(long atNanos, int slot, int serial) {
            shown[slot] = Math.max(shown[slot], atNanos);
            currents.shown(atNanos, slot, serial);
        }

        @Override
        public void moved(long atNanos, int slot, long from, long untilNanos, long to) {
            shown[slot] = Math.max(shown[slot], untilNanos);
            currents.moved(atNanos, slot, from, untilNanos, to);
        }

        @Override
        public void reset(long atNanos, int node, long readyNanos) {
            currents.reset(atNanos, node, readyNanos);
        }
    }
}
