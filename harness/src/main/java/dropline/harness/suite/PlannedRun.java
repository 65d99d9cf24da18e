package dropline.harness.suite;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Pit;
import dropline.harness.pitfile.PitFile;
import dropline.harness.problem.Problem;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * One run of a suite, to be run once with each of its seeds.
 *
 * @param name in the suite
 * @param source what is played
 * @param opening opens it
 * @param seeds at least one, each once
 * @param stated what goes wrong, and where the suite says so
 * @param holds what it is held to
 */
public record PlannedRun(
        String name, Played source, Source.Opening opening, List<Long> seeds, List<StatedFault> stated, Holds holds) {
    public PlannedRun {
        seeds = List.copyOf(seeds);
        stated = List.copyOf(stated);
        if (seeds.isEmpty()) {
            throw new IllegalArgumentException("a run needs a seed: seeds=0");
        }
    }

    /** The name of what is played, for people. */
    public String played() {
        return source.name();
    }

    /** What is played, what goes wrong and how, as 16 hexadecimal digits; equal where all of that is the same. */
    public String content() throws IOException {
        StringBuilder faults = new StringBuilder();
        stated.forEach(fault -> faults.append('\n').append(fault.text().text()));
        return source.content(faults.toString());
    }

    /** The same run through another pit; empty where that does not have what its faults strike. */
    public Optional<PlannedRun> through(PitFile.Understood other) {
        List<StatedFault> again = new ArrayList<>();
        for (StatedFault fault : stated) {
            StatedFault.Read read = StatedFault.read(fault.text(), other.pit(), OptionalLong.empty());
            if (!read.problems().isEmpty()) {
                return Optional.empty();
            }
            again.addAll(read.faults());
        }
        return Optional.of(new PlannedRun(name, source, source.opening(other), seeds, again, holds));
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
