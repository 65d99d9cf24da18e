package dropline.harness.suite;

import dropline.bus.fault.Fault;
import dropline.bus.pit.Layout;
import dropline.bus.pit.Pit;
import dropline.harness.fault.FaultText;
import dropline.harness.pitfile.PitFile;
import dropline.harness.problem.Problem;
import dropline.harness.replay.Source;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;

/**
 * One run of a suite, to be run once with each of its seeds.
 *
 * @param name in the suite
 * @param source what is played
 * @param opening opens it
 * @param seeds at least one, each once
 * @param stated what goes wrong, and where the suite says so
 * @param inTurn what goes wrong besides, one after the other, each in a run of its own; empty for a single run
 * @param holds what it is held to
 */
public record PlannedRun(
        String name,
        Played source,
        Source.Opening opening,
        List<Long> seeds,
        List<StatedFault> stated,
        List<StatedFault> inTurn,
        Holds holds) {
    public PlannedRun {
        seeds = List.copyOf(seeds);
        stated = List.copyOf(stated);
        inTurn = List.copyOf(inTurn);
        if (seeds.isEmpty()) {
            throw new IllegalArgumentException("a run needs a seed: seeds=0");
        }
    }

    /**
     * One run of it.
     *
     * @param faults what goes wrong
     * @param after what of that is tried in turn, for people; empty for nothing
     */
    public record Turn(List<Fault> faults, String after) {
        public Turn {
            faults = List.copyOf(faults);
        }
    }

    /** Every run of it with one seed: one, or one for each fault that is tried in turn. */
    public List<Turn> turns(Pit pit) {
        List<Fault> always = stated.stream().map(StatedFault::fault).toList();
        if (inTurn.isEmpty()) {
            return List.of(new Turn(always, ""));
        }
        FaultText texts = new FaultText(pit, Layout.of(pit));
        List<Turn> turns = new ArrayList<>();
        for (StatedFault one : inTurn) {
            List<Fault> faults = new ArrayList<>(always);
            faults.add(one.fault());
            turns.add(new Turn(faults, texts.what(one.fault())));
        }
        return turns;
    }

    /** Whether what comes of it is followed from one time to the next; what is tried in turn is only judged. */
    public boolean isFollowed() {
        return inTurn.isEmpty();
    }

    /** The name of what is played, for people. */
    public String played() {
        return source.name();
    }

    /** The recording that is played; empty for a load. */
    public Optional<Path> file() {
        return source instanceof Played.Recorded recorded ? Optional.of(recorded.file()) : Optional.empty();
    }

    /** What is played, what goes wrong and how, as 16 hexadecimal digits; equal where all of that is the same. */
    public String content() throws IOException {
        StringBuilder faults = new StringBuilder();
        stated.forEach(fault -> faults.append('\n').append(fault.text().text()));
        inTurn.stream()
                .limit(1)
                .forEach(
                        fault -> faults.append("\nin turn ").append(fault.text().text()));
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
        return Optional.of(new PlannedRun(name, source, source.opening(other), seeds, again, List.of(), holds));
    }

    /** Faults that had no time to strike in a run of this length, each at its place in the suite. */
    public List<Problem> neverStruck(Pit pit, long ranNanos) {
        return Stream.concat(stated.stream(), inTurn.stream())
                .flatMap(fault -> fault.neverStruck(pit, ranNanos).stream())
                .toList();
    }
}
