package dropline.harness.verdict;

import org.jspecify.annotations.Nullable;

/**
 * One signal on one indicator of a panel.
 *
 * @param indicator the indicator's name
 * @param indicatorKind what it is, in small letters: {@code gauge stepper}
 * @param signal the signal's name
 * @param unit the signal's unit
 * @param changes changes of the signal after the start
 * @param initial changes that belong to the first state, not judged
 * @param updateLatency from the oldest change not yet shown to the panel showing it or a newer one
 * @param ownDelay from the change that was delivered to the panel showing it
 * @param meanStages where the update latency went, on average
 * @param worstStages where the longest update latency went
 * @param ageMeanNanos how old what it shows is, time average, ns
 * @param agePeakNanos the same at its oldest, ns
 * @param displayErrorMax greatest difference of true and shown value, in the unit
 * @param displayErrorRms root of the mean square of that difference over time, in the unit
 * @param settling moving indicators: from the oldest change to the end of the motion; else null
 * @param coalesced values replaced by a newer one while they waited
 * @param missed changes undone before they were sent (0-1-0): never seen by anybody
 * @param lost changes sent, but neither shown nor replaced by a newer change within the run's last second
 */
public record SignalResult(
        String indicator,
        String indicatorKind,
        String signal,
        String unit,
        long changes,
        long initial,
        Latency updateLatency,
        Latency ownDelay,
        Stages meanStages,
        Stages worstStages,
        long ageMeanNanos,
        long agePeakNanos,
        double displayErrorMax,
        double displayErrorRms,
        @Nullable Latency settling,
        long coalesced,
        long missed,
        long lost) {}
