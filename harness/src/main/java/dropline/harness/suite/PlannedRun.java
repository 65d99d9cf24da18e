package dropline.harness.suite;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import dropline.harness.problem.Problem;
import dropline.harness.replay.Source;
import java.util.List;

/**
 * One run of a suite, to be run once with each of its seeds.
 *
 * @param name in the suite
 * @param played the name of what is played, for people
 * @param opening opens it
 * @param seeds at least one, each once
 * @param stated what goes wrong, and where the suite says so
 * @param holds what it is held to
 */
public record PlannedRun(
        String name, String played, Source.Opening opening, List<Long> seeds, List<StatedFault> stated, Holds holds) {
    public PlannedRun {
        seeds = List.copyOf(seeds);
        stated = List.copyOf(stated);
        if (seeds.isEmpty()) {
            throw new IllegalArgumentException("a run needs a seed: seeds=0");
        }
    }

    /** What goes wrong. */
    public List<Fault> faults() {
        return stated.stream().map(StatedFault::fault).toList();
    }

    /** Faults that had no time to strike in a run of this length, each at its place in the suite. */
    public List<Problem> neverStruck(Pit pit, long ranNanos) {
        return stated.stream()
                .flatMap(fault -> fault.neverStruck(pit, ranNanos).stream())
                .toList();
    }
}
