package dropline.harness.power;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * From the supplies' being switched on to everything being shown, ns from then.
 *
 * @param steps what happens, in order
 * @param readyNanos when everything is shown right and every switch is known
 * @param peaks the most each supply gives on the way, in the order of the supplies
 * @param staggered the same with each board's motors delayed by its address; null where that helps none of them
 * @param zoneLagNanos from the first backlight zone to show the first state's level to the last; 0 without two zones
 */
public record PowerUp(
        List<Step> steps,
        long readyNanos,
        List<Peak> peaks,
        @Nullable Staggered staggered,
        long zoneLagNanos) {
    /** Something that happens, for people. */
    public record Step(long atNanos, String what) {}

    /**
     * The most a supply gives.
     *
     * @param amps until the computer starts, A
     * @param why what takes the most of it then
     * @param firstStateAmps after that, as everything goes to where the first state says, A
     */
    public record Peak(
            String supply, double amps, long atNanos, String why, double firstStateAmps, long firstStateNanos) {}

    /**
     * A start in turn.
     *
     * @param delayNanos by which each board waits for every address before its own
     * @param readyNanos as above
     * @param amps the most each supply then gives until the computer starts, A
     */
    public record Staggered(long delayNanos, long readyNanos, List<Double> amps) {
        public Staggered {
            amps = List.copyOf(amps);
        }
    }

    public PowerUp {
        steps = List.copyOf(steps);
        peaks = List.copyOf(peaks);
    }
}
