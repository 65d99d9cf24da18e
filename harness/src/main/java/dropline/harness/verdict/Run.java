package dropline.harness.verdict;

import java.util.List;

/**
 * What the verdicts need to know of a run beside its measures.
 *
 * @param droplineVersion the program's
 * @param recording what was replayed
 * @param seed the run's seed
 * @param digest of the trace
 * @param caveats what the figures rest on that the pit and the trace do not tell
 */
public record Run(String droplineVersion, Recording recording, long seed, long digest, List<String> caveats) {
    public Run {
        caveats = List.copyOf(caveats);
    }
}
