package dropline.harness.suite;

import dropline.harness.pitfile.PitFile;
import java.util.List;

/**
 * A suite and its pit.
 *
 * @param name of the suite, for people
 * @param pit what its runs are played through
 * @param runs in the order of the file, at least one
 */
public record Suite(String name, PitFile.Understood pit, List<PlannedRun> runs) {
    public Suite {
        runs = List.copyOf(runs);
    }
}
