package dropline.harness.baseline;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The runs of a suite as they were when they were accepted.
 *
 * @param suite its name
 * @param droplineVersion of the program that ran them
 * @param seeds how many each run was repeated with
 * @param runs by their names, in the order of the suite
 */
public record Accepted(String suite, String droplineVersion, int seeds, Map<String, AcceptedRun> runs) {
    public Accepted {
        runs = Collections.unmodifiableMap(new LinkedHashMap<>(runs));
    }
}
