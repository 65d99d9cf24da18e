package dropline.harness.power;

import dropline.bus.pit.Pit;
import dropline.harness.replay.Progress;
import dropline.harness.replay.Source;
import dropline.harness.replay.WatchedRun;
import java.io.IOException;
import java.util.List;

/** Plays a recording through a pit and follows its currents. */
public final class FlightStudy {
    private FlightStudy() {}

    /**
     * A result with the currents over a recording.
     *
     * @param name the recording's, for people
     * @param threads at least 1; what comes out is the same whatever their number
     * @throws IOException if the recording cannot be read
     */
    public static PowerResult over(
            PowerResult result, Pit pit, String name, Source.Opening opening, long seed, int threads, Progress progress)
            throws IOException {
        Currents currents = new Currents(pit);
        WatchedRun.Ran ran =
                new WatchedRun(pit, opening, seed, List.of(), threads).run(currents.watches(), currents, progress);
        return result.over(currents.ended(name, ran.durationNanos(), ran.losses()));
    }
}
