package dropline.harness.replay;

import dropline.bus.trace.TraceSink;

/** Who else hears the events of a replay's run. */
@FunctionalInterface
public interface Beside {
    /** Nobody. */
    Beside NOBODY = (segment, measures) -> measures;

    /**
     * A sink that hands on every event to the replay's own. Called once for each segment, before its first event.
     *
     * @param segment index into the pit's
     */
    TraceSink with(int segment, TraceSink measures);
}
