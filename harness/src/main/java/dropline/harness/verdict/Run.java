package dropline.harness.verdict;

import dropline.harness.finding.Finding;
import java.util.List;

/**
 * What the verdicts need to know of a run beside its measures.
 *
 * @param droplineVersion the program's
 * @param recording what was replayed
 * @param seed the run's seed
 * @param digest of the trace
 * @param faults what it was given to go wrong
 * @param findings what its trace says is wrong
 * @param caveats what the figures rest on that the pit and the trace do not tell
 * @param isObserved whether real boards, or such as are played, answered; if not, all of it was simulated
 */
public record Run(
        String droplineVersion,
        Recording recording,
        long seed,
        long digest,
        List<InjectedFault> faults,
        List<Finding> findings,
        List<String> caveats,
        boolean isObserved) {

    /** A simulated run. */
    public Run(
            String droplineVersion,
            Recording recording,
            long seed,
            long digest,
            List<InjectedFault> faults,
            List<Finding> findings,
            List<String> caveats) {
        this(droplineVersion, recording, seed, digest, faults, findings, caveats, false);
    }

    /** A simulated run without faults, in which nothing was found. */
    public Run(String droplineVersion, Recording recording, long seed, long digest, List<String> caveats) {
        this(droplineVersion, recording, seed, digest, List.of(), List.of(), caveats);
    }

    public Run {
        faults = List.copyOf(faults);
        findings = List.copyOf(findings);
        caveats = List.copyOf(caveats);
    }
}
