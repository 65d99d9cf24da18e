package dropline.harness.suite;

import dropline.harness.pitfile.PitFile;
import java.nio.file.Path;
import java.util.List;

/**
 * A suite and its pit.
 *
 * @param name of the suite, for people
 * @param pitFile where its pit lies
 * @param pit what its runs are played through
 * @param rules what the pit itself must keep
 * @param live steps that need hardware, in the order of the file
 * @param runs in the order of the file; with the live steps at least one
 */
public record Suite(
        String name,
        Path pitFile,
        PitFile.Understood pit,
        List<PitRule> rules,
        List<LiveStep> live,
        List<PlannedRun> runs) {
    public Suite {
        rules = List.copyOf(rules);
        live = List.copyOf(live);
        runs = List.copyOf(runs);
    }

    /** The runs whose outcome is followed from one time to the next. */
    public List<PlannedRun> followed() {
        return runs.stream().filter(PlannedRun::isFollowed).toList();
    }
}
