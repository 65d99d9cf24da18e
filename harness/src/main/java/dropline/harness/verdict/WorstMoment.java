package dropline.harness.verdict;

import java.util.List;

/**
 * The slowest update of a panel, and what its segment was doing around it.
 *
 * @param indicator which of the panel's indicators
 * @param signal what it was to show
 * @param changedNanos the oldest change not yet shown, ns into the recording
 * @param shownNanos when the panel showed it or a newer one, ns into the recording
 * @param stages where the time went
 * @param timesCarried frames that carried the signal in that time; above 1, newer values or a frame sent again
 * @param timeOuts transactions of the panel's node that timed out in that time
 * @param clashes clashes on the segment in that time
 * @param overruns frames its node lost in its buffers in that time
 * @param fromNanos start of the window that the frames cover, ns into the recording
 * @param untilNanos end of that window
 * @param frames at most 200, by start; when there were more, those nearest the end
 */
public record WorstMoment(
        String indicator,
        String signal,
        long changedNanos,
        long shownNanos,
        Stages stages,
        int timesCarried,
        int timeOuts,
        int clashes,
        int overruns,
        long fromNanos,
        long untilNanos,
        List<BusFrame> frames) {
    public WorstMoment {
        frames = List.copyOf(frames);
        if (stages.totalNanos() != shownNanos - changedNanos) {
            throw new IllegalArgumentException("stages must add up to the latency: stages=" + stages.totalNanos()
                    + " latency=" + (shownNanos - changedNanos));
        }
    }

    /** The update latency, ns. */
    public long latencyNanos() {
        return shownNanos - changedNanos;
    }
}
